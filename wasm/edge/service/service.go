package service

import (
	"net/http"
	"strings"
	"sync"
	"time"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/words"
)

// Config is what a place where the service runs decides. The zero value is closed to other origins and gives the usual
// limits.
type Config struct {
	// Origins may ask from a page of theirs (CORS): "https://example.org", or "*" for anyone. Empty: none.
	Origins []string
	// Patience is how long a body may take to come, where no server in front of the handler looks after that; 0: as long as it takes.
	Patience time.Duration
	// Build names the commit or release, for /v1/version.
	Build  string
	Limits Limits
}

// Limits bound what one request may cost. Zero values stand for Usual.
type Limits struct {
	Body     int // bytes
	Depth    int // of nested JSON
	Cells    int // of the film
	Budget   int // steps of the integrator for one job
	Settings int // settings of a search
	Search   int // steps for all settings of a search, or all rows of a table
	Rows     int // of a table

	Resamplings int // of a fit
	Runs        int // of the model for a fit
}

// Usual are limits under which every worked example is answered, and which hold a request to some seconds.
func Usual() Limits {
	return Limits{Body: 256 << 10, Depth: 32, Cells: 64, Budget: 100_000, Settings: 600, Search: 2_000_000, Rows: 200, Resamplings: 200, Runs: 1000}
}

// orUsual fills in what is left open.
func (l Limits) orUsual() Limits {
	usual := Usual()
	for _, f := range []struct{ own, usual *int }{{&l.Body, &usual.Body}, {&l.Depth, &usual.Depth}, {&l.Cells, &usual.Cells},
		{&l.Budget, &usual.Budget}, {&l.Settings, &usual.Settings}, {&l.Search, &usual.Search}, {&l.Rows, &usual.Rows},
		{&l.Resamplings, &usual.Resamplings}, {&l.Runs, &usual.Runs}} {
		if *f.own <= 0 {
			*f.own = *f.usual
		}
	}
	return l
}

// Language is one that the service can speak. Its words are read when somebody first asks for them.
type Language struct {
	Tag  string
	Open func() (*words.Words, error)
}

// service answers requests in the languages it was given.
type service struct {
	config  Config
	tongues []*tongue
}

// tongue is a language and what answers in it.
type tongue struct {
	tag    string
	answer func() func([]byte) []byte
}

// New makes the handler. Of the languages the first is spoken to whoever asks for none of them. Nothing is worked out before
// a request needs it: on an edge platform the handler may be made anew for each one.
func New(c Config, languages ...Language) http.Handler {
	c.Limits = c.Limits.orUsual()
	s := &service{config: c}
	for _, l := range languages {
		s.tongues = append(s.tongues, &tongue{l.Tag, sync.OnceValue(func() func([]byte) []byte { return c.Limits.answering(l) })})
	}
	return s.secured(s.identified(s.crossed(s.compressed(s.received(http.HandlerFunc(s.route))))))
}

// answering is the core in a language, within the limits.
func (l Limits) answering(language Language) func([]byte) []byte {
	w, err := language.Open()
	if err != nil { // the file is part of the program
		return func([]byte) []byte { return nil }
	}
	return api.Offer(w, api.Within(api.Budget{Cells: l.Cells, Steps: l.Budget, Settings: l.Settings, Search: l.Search, Resamplings: l.Resamplings, Runs: l.Runs})...)
}

// speak chooses the language by the header Accept-Language, by the plain order of the tags there.
func (s *service) speak(r *http.Request) *tongue {
	for _, wanted := range strings.Split(r.Header.Get("Accept-Language"), ",") {
		tag, _, _ := strings.Cut(strings.TrimSpace(wanted), ";")
		base, _, _ := strings.Cut(strings.ToLower(tag), "-")
		for _, t := range s.tongues {
			if t.tag == base {
				return t
			}
		}
	}
	return s.tongues[0]
}
