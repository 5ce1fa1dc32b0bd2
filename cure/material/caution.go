package material

import "github.com/drywright/drywright/cure/words"

// Caution is the key of a warning that belongs to a record.
type Caution string

// The cautions.
const (
	Isocyanate       Caution = "isocyanate"
	Aziridine        Caution = "aziridine"
	Carbodiimide     Caution = "carbodiimide"
	Formaldehyde     Caution = "formaldehyde"
	CoSolvent        Caution = "co_solvent"
	FibreDust        Caution = "fibre_dust"
	Decomposition    Caution = "decomposition"
	HydrogenChloride Caution = "hydrogen_chloride"
	DampPlastic      Caution = "damp_plastic"
	OpenPores        Caution = "open_pores"
)

// CautionText is a caution in words, with where it comes from. The maker's safety data sheet, local codes and a licensed
// practitioner come before it.
type CautionText struct {
	Key    Caution `json:"key"`
	Text   string  `json:"text"`
	Source string  `json:"source"`
}

// Cautions lists every caution with its words.
func Cautions() []CautionText {
	var all []CautionText
	for _, c := range []Caution{Isocyanate, Aziridine, Carbodiimide, Formaldehyde, CoSolvent, FibreDust, Decomposition, HydrogenChloride,
		DampPlastic, OpenPores} {
		at := "materials.caution." + string(c) + "."
		all = append(all, CautionText{c, words.Key(at + "text"), words.Key(at + "source")})
	}
	return all
}
