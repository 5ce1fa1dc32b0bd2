package material

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

// Cautions puts every caution into words.
func Cautions() []CautionText {
	return []CautionText{
		{Isocyanate, "Isocyanate crosslinkers sensitise the airways: spray only with extraction and respiratory protection, and " +
			"keep skin covered.", commonPractice},
		{Aziridine, "Aziridine crosslinkers are toxic and sensitising: spray only with extraction and respiratory protection, " +
			"and keep skin covered.", commonPractice},
		{Carbodiimide, "Carbodiimide crosslinkers can hold free isocyanate and give some off when overheated: extract while spraying and " +
			"curing.", commonPractice},
		{Formaldehyde, "N-methylol groups give off formaldehyde and methanol as they cure: lead the oven's exhaust outside.",
			"condensation of methylol groups (Meijer 1986, J. Polymer Science A 24, 2199-2208); limits are set by local codes"},
		{CoSolvent, "A water-borne adhesive can still hold co-solvent. Ovens that receive flammable vapour are ventilated to a " +
			"quarter of the lower flammable limit and purged with four volumes before ignition.",
			"NFPA 86; for dryers EN 1539, whose scope ends where the vapour stays below 3 % of the limit"},
		{FibreDust, "Loose flock can burn and explode as dust: keep it out of ovens and ducts and away from the high voltage; " +
			"use suction, not compressed air.",
			"OSHA Hazard Information Bulletin of 6 October 1998, Dust Explosion Hazard in Certain Textile Processes; " +
				"Environmental study of nylon flocking process, J. Toxicol. Environ. Health A 57 (1999) 1-23"},
		{Decomposition, "Above its limit this plastic warps, and further above it decomposes and gives off hazardous vapour.",
			commonPractice},
		{HydrogenChloride, "Overheated PVC gives off hydrogen chloride.", commonPractice},
		{DampPlastic, "Damp parts of this plastic blister when heated fast: dry them first.",
			"plastics handbooks, from memory"},
		{OpenPores, "Open pores drink the adhesive and leave bald spots: seal first.", commonPractice},
	}
}
