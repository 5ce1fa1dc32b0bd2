package result

// CriterionName names something that a setting has to satisfy.
type CriterionName string

// The criteria: first the marks that have to hold when the part leaves the oven, then the deadline, then what must not go
// wrong. They carry the names of the marks and risks that they judge.
const (
	TouchAtExit    CriterionName = "touch_at_exit"
	TackFreeAtExit CriterionName = "tack_free_at_exit"
	DryAtExit      CriterionName = "dry_through_at_exit"
	CuredAtExit    CriterionName = "cured_at_exit"
	CoolAtExit     CriterionName = "cool_at_exit"
	ReadyInTime    CriterionName = "ready_by_deadline"
	NoBoiling      CriterionName = "boiling"
	FilmFormed     CriterionName = "film_forming"
	PartSpared     CriterionName = "part_limit"
	NoDew          CriterionName = "dew"
	FlockedInTime  CriterionName = "flocked_late"
	HeatEnough     CriterionName = "heat_short"
	NotFlammable   CriterionName = "flammable"
	Computed       CriterionName = "computed" // the run came to its end
)

// CriterionNames lists the criteria in the order in which they are judged.
func CriterionNames() []CriterionName {
	return []CriterionName{TouchAtExit, TackFreeAtExit, DryAtExit, CuredAtExit, CoolAtExit, ReadyInTime, NoBoiling, FilmFormed,
		PartSpared, NoDew, FlockedInTime, HeatEnough, NotFlammable, Computed}
}

// Criterion is one thing that a setting has to satisfy, as the share of what it allows that is used: met up to 1.
//
// Up to 1 the share is that of the time allowed, of the way to a limit, or of an installed power. Beyond 1 it says how
// far the setting is off, and no more than that: a mark that is not reached in time has no time.
type Criterion struct {
	Name  CriterionName `json:"name"`
	Place string        `json:"place"` // zone or oven; empty where it is of the part
	Spot  string        `json:"spot"`  // the part's spot that is worst off; empty for the open face
	Share float64       `json:"share"`
	Text  string        `json:"text,omitempty"` // what the share is the share of; where a person reads it
}

// Met reports whether the criterion is satisfied.
func (c *Criterion) Met() bool { return c.Share <= 1 }

// Judgement is one route judged by its criteria, without curves and words.
type Judgement struct {
	Criteria []Criterion `json:"criteria"`
	Ready    *float64    `json:"ready_s"` // of the worst spot; null: not within the time that was followed
	Amounts  Amounts     `json:"amounts"`
	Status   Status      `json:"status"`
	Spent    int         `json:"-"` // steps of the job's budget that it took, in all its runs; for who shares a budget out
}

// Worst is the place in Criteria of the one with the largest share; -1 where there are none.
func (j *Judgement) Worst() int {
	worst := -1
	for i := range j.Criteria {
		if worst < 0 || j.Criteria[i].Share > j.Criteria[worst].Share {
			worst = i
		}
	}
	return worst
}

// Met reports whether every criterion is satisfied.
func (j *Judgement) Met() bool {
	w := j.Worst()
	return w >= 0 && j.Criteria[w].Met()
}
