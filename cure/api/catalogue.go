package api

import (
	"github.com/drywright/drywright/cure/derive"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/material"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/transfer"
	"github.com/drywright/drywright/cure/unit"
)

// Catalogue is everything that a form needs before there is a job: the table of fields and blocks, the records to start
// from with their cautions, the methods of heat transfer, and two whole jobs. Version is that of the requests.
type Catalogue struct {
	Version   int                    `json:"version"`
	Fields    []job.Field            `json:"fields"`
	Blocks    []job.Block            `json:"blocks"`
	Adhesives []material.Adhesive    `json:"adhesives"`
	Parts     []material.Part        `json:"parts"`
	Fibres    []material.Fibre       `json:"fibres"`
	Cautions  []material.CautionText `json:"cautions"`
	Demo      job.Job                `json:"demo"`
	Demos     []job.Named            `json:"demos"` // the demo first, then one for each question
	Default   job.Job                `json:"default"`
	Methods   []Method               `json:"methods"`
	Helpers   []derive.Helper        `json:"helpers"`  // to numbers that people lack
	Units     []unit.Scale           `json:"units"`    // all that may be typed into a number, by what it measures
	Measures  report.Measures        `json:"measures"` // the units of what results measure, in the system that was asked for
}

// Method is one way to a heat-transfer coefficient: its name, equation, source and the range in which it holds.
type Method struct {
	Name     string `json:"name"`
	Equation string `json:"equation"`
	Source   string `json:"source"`
	Range    string `json:"range"`
}

// describe gathers the catalogue.
func describe(say report.Speaker) Catalogue {
	c := Catalogue{
		Version: Version, Fields: job.Fields(), Blocks: job.Blocks(),
		Adhesives: material.Adhesives(), Parts: material.Parts(), Fibres: material.Fibres(), Cautions: material.Cautions(),
		Demo: job.Demo(), Demos: job.Demos(), Default: job.Default(),
		Units: unit.Scales(), Helpers: derive.Helpers(), Measures: say.Measures(),
	}
	// A job that somebody begins to write has its texts in the writer's language.
	for i := range c.Fields {
		switch f := &c.Fields[i]; f.Path {
		case "name":
			c.Default.Name = f.Text
		case "film.adhesive.transport.reason":
			c.Default.Film.Adhesive.Transport.Reason = f.Text
		}
	}
	for _, m := range transfer.Methods() {
		c.Methods = append(c.Methods, Method(m))
	}
	return c
}
