package plan

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words"
)

// WindowQuestion asks which settings of two variables are good.
type WindowQuestion struct {
	Study  Study `json:"study"`
	X      Axis  `json:"x"`
	Y      Axis  `json:"y"`
	Points int   `json:"points"` // of the picture along each axis; 0: 60
}

// Axis is a variable and the stretch of it that is looked at, in SI units. Low and High both 0: where the trade usually is.
type Axis struct {
	Variable string  `json:"variable"`
	Low      float64 `json:"low"`
	High     float64 `json:"high"`
}

// Window is the area of good settings, with what limits it. It comes from coarse to fine: the last one is Complete.
type Window struct {
	Route      result.Kind   `json:"route"`
	Goal       sim.Goal      `json:"goal"`
	X          Variable      `json:"x"`
	Y          Variable      `json:"y"`
	XLow       float64       `json:"x_low"`
	XHigh      float64       `json:"x_high"`
	YLow       float64       `json:"y_low"`
	YHigh      float64       `json:"y_high"`
	Limits     []WindowLimit `json:"limits"` // the criteria that fail somewhere in the picture
	Columns    int           `json:"columns"`
	Cells      []int         `json:"cells"`      // row by row from YLow, column by column from XLow: -1 good, else the place in Limits of what fails most
	Boundaries []Boundary    `json:"boundaries"` // where good ends
	Present    Spot          `json:"present"`
	Robust     *Spot         `json:"robust"` // the good setting farthest from every limit; null: none is good
	Good       float64       `json:"good"`   // share of the area
	Complete   bool          `json:"complete"`
	Runs       int           `json:"runs"`
	Expected   int           `json:"expected"` // of runs altogether, roughly
	Text       string        `json:"text"`
	Detail     string        `json:"detail"` // how far the picture is resolved
}

// WindowLimit is one thing that fails somewhere in a window.
type WindowLimit struct {
	Name result.CriterionName `json:"name"`
	Text string               `json:"text"`
}

// Boundary is a line on which a criterion is just met, in the window's variables, where the setting beside it is good.
type Boundary struct {
	Limit int       `json:"limit"` // place in Limits
	X     []float64 `json:"x"`
	Y     []float64 `json:"y"`
}

// Spot is a setting of a window.
type Spot struct {
	X        float64  `json:"x"`
	Y        float64  `json:"y"`
	XText    string   `json:"x_text"` // in their display units
	YText    string   `json:"y_text"`
	Standing Standing `json:"standing"` // its value is that of X
	Margin   float64  `json:"margin"`   // distance to the nearest boundary as a share of the picture's width or height; 0 where it is not good
}

// The picture has this many dots along each axis where the question does not say.
const (
	usualDots = 60
	mostDots  = 200
)

// FindWindow finds the area of good settings. It judges settings on a lattice that gets closer along the boundaries of the
// good area, locates each criterion's boundary on the lattice's lines by root finding, and bends the lines between until
// they follow it within a thousandth of the picture. Good areas that lie between the coarsest nodes, a quarter of the
// picture apart, can be missed.
//
// tell takes the picture as it fills in; nil where nobody watches.
//
// Errors: variables or a route that the job does not have, ranges that are none; what evaluate returns.
func FindWindow(q WindowQuestion, evaluate Evaluate, tell func(Window)) (Window, error) {
	s, err := newSurvey(q, evaluate, tell)
	if err != nil {
		return Window{}, err
	}
	return s.survey()
}

// survey goes through all of it.
func (s *survey) survey() (Window, error) {
	if err := s.lay(); err != nil {
		return s.window, err
	}
	if s.criteria == nil {
		return s.window, fault.New(fault.Conflict, "window", words.Told("no setting in the picture is accepted: {refused}", "refused", s.nodes[node{}].Refused), words.Told("Look at other ranges."))
	}
	if err := s.here(); err != nil {
		return s.window, err
	}
	s.report()
	for {
		if err := s.divide(); err != nil {
			return s.window, err
		}
		var open []cell
		for _, c := range s.cells {
			if _, drawn := s.lines[c]; !drawn && s.divided(c) {
				open = append(open, c)
			}
		}
		if len(open) == 0 {
			break
		}
		if err := s.cross(open); err != nil {
			return s.window, err
		}
		failed, err := s.join(open)
		if err != nil {
			return s.window, err
		}
		if _, err := s.refine(func(c cell) bool { return failed[c] && c.size > finest }); err != nil {
			return s.window, err
		}
	}
	s.draw()
	if err := s.settle(); err != nil {
		return s.window, err
	}
	s.window.Complete, s.window.Runs, s.window.Expected = true, s.runs, s.runs
	return s.window, nil
}

// divide cuts all cells down to the coarse size, the divided ones down to the usual size, and further those in which a boundary meets settings that are not
// accepted: nothing is known there to draw it by. A finer neighbour may show that a cell is divided after all, so this goes
// on until none is.
func (s *survey) divide() error {
	for {
		cut, err := s.refine(func(c cell) bool {
			return c.size > coarse || (c.size > usual || c.size > finest && s.torn(c)) && s.divided(c)
		})
		if err != nil || !cut {
			return err
		}
		s.report()
	}
}

// mapTolerance is the tolerance of integration at which a window is found: it moves marks by some hundredths of a per cent,
// a tenth of what the lines are drawn to, and takes two thirds of the time. Settings that are told are judged at the job's own.
const mapTolerance = 1e-4

// coarse is the study with a job that is integrated no more finely than a window needs.
func (s Study) coarse() Study {
	j := *s.Job
	j.Numerics.RelativeTolerance = math.Max(j.Numerics.RelativeTolerance, mapTolerance)
	s.Job = &j
	return s
}

func newSurvey(q WindowQuestion, evaluate Evaluate, tell func(Window)) (*survey, error) {
	study, err := q.Study.Settle(evaluate)
	if err != nil {
		return nil, err
	}
	s := &survey{question: q, exact: study, study: study.coarse(), evaluate: evaluate, tell: tell, nodes: map[node]*Outcome{}, lines: map[cell][]line{}, zeros: map[crossing]point{}}
	w := &s.window
	w.Route, w.Goal = study.Route, *study.Goal
	if s.x, w.XLow, w.XHigh, err = study.axis("x", q.X); err != nil {
		return nil, err
	}
	if s.y, w.YLow, w.YHigh, err = study.axis("y", q.Y); err != nil {
		return nil, err
	}
	if q.X.Variable == q.Y.Variable {
		return nil, fault.New(fault.Conflict, "window.y.variable", q.Y.Variable, words.Told("Choose two different variables."))
	}
	w.X, w.Y, w.Columns = s.x, s.y, q.Points
	if w.Columns == 0 {
		w.Columns = usualDots
	}
	if w.Columns < 2 || w.Columns > mostDots {
		return nil, fault.OutOfRange("window.points", float64(w.Columns), 2, mostDots, "", words.Told("Give a number of dots along each axis."))
	}
	return s, nil
}

// axis is the variable of an axis and the stretch of it that is looked at.
func (s Study) axis(name string, a Axis) (v Variable, low, high float64, err error) {
	if v, err = s.Variable(a.Variable); err != nil {
		return v, 0, 0, err
	}
	if a.Low == 0 && a.High == 0 {
		low, high = v.around()
		return v, low, high, nil
	}
	if !(a.Low < a.High) || a.Low < v.Low || a.High > v.High {
		return v, 0, 0, fault.New(fault.Conflict, "window."+name, words.Told("{low} to {high} {unit}", "low", words.Figure(fault.Number(a.Low)), "high", words.Figure(fault.Number(a.High)), "unit", v.Unit),
			words.Told("Give a stretch that rises, between {low} and {high} {unit}.", "low", words.Figure(fault.Number(v.Low)), "high", words.Figure(fault.Number(v.High)), "unit", v.Unit))
	}
	return v, a.Low, a.High, nil
}

// around is where to look first: half to twice the present value of what counts as a ratio, else the usual range, widened so
// that the present value stands inside.
func (v *Variable) around() (low, high float64) {
	low, high = v.UsualLow, v.UsualHigh
	if v.Log {
		low, high = v.Present/2, v.Present*2
	}
	low, high = math.Min(low, v.Present-v.Step), math.Max(high, v.Present+v.Step)
	if v.Log {
		low, high = v.Present/2, v.Present*2
	}
	return math.Max(low, v.Low), math.Min(high, v.High)
}

// here judges the present setting.
func (s *survey) here() error {
	w := &s.window
	p := point{(s.x.Present - w.XLow) / (w.XHigh - w.XLow), (s.y.Present - w.YLow) / (w.YHigh - w.YLow)}
	spot, err := s.spot(p)
	w.Present = spot
	w.Present.X, w.Present.Y = s.x.Present, s.y.Present
	return err
}

func (s *survey) spot(p point) (Spot, error) {
	t := s.setting(p)
	s.runs++
	outcomes, err := s.evaluate(s.exact, []Trial{t})
	if err != nil {
		return Spot{}, err
	}
	return Spot{X: t[0].Value, Y: t[1].Value, Standing: standing(t[0].Value, &outcomes[0])}, nil
}

// settle finds the robust setting and how far the present one lies from its limits.
func (s *survey) settle() error {
	w := &s.window
	best, margin := s.roomiest()
	if margin > 0 {
		spot, err := s.spot(best)
		if err != nil {
			return err
		}
		spot.Margin = margin
		if spot.Standing.Met {
			w.Robust = &spot
		}
	}
	p := point{(w.Present.X - w.XLow) / (w.XHigh - w.XLow), (w.Present.Y - w.YLow) / (w.YHigh - w.YLow)}
	if w.Present.Standing.Met {
		if segments := s.segments(); len(segments) > 0 {
			w.Present.Margin = nearest(p, segments)
		}
	}
	return nil
}
