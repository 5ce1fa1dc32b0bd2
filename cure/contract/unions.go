package contract

import (
	"reflect"

	"github.com/drywright/drywright/cure/derive"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
)

// unions lists the words of every named text type; Go has no way to ask a type for its constants.
func unions() map[reflect.Type][]string {
	return map[reflect.Type][]string{
		reflect.TypeFor[job.Back]():        words(job.BackExposed, job.BackInsulated, job.BackCoated),
		reflect.TypeFor[job.Orientation](): words(job.Vertical, job.FacingUp, job.FacingDown),
		reflect.TypeFor[job.TransferKind](): words(job.Given, job.ParallelFlow, job.Natural, job.Combined,
			job.SlotNozzles, job.RoundNozzles),
		reflect.TypeFor[job.Mechanism]():    words(job.LiquidDiffusion, job.PorousSkin),
		reflect.TypeFor[job.IsothermKind](): words(job.IsothermGAB, job.IsothermFloryHuggins),
		reflect.TypeFor[job.ZoneKind]():     words(job.Heated, job.Cooling),
		reflect.TypeFor[job.FitKind]():      words(job.WeightFit, job.RecorderFit, job.CureFit, job.SorptionFit),
		reflect.TypeFor[job.FieldKind]():    words(job.KindNumber, job.KindText, job.KindChoice, job.KindSwitch),
		reflect.TypeFor[result.Kind]():      words(result.Room, result.StaticOven, result.Tunnel),
		reflect.TypeFor[result.Verdict]():   words(result.InTime, result.TooLate, result.NotReached, result.AtRisk),
		reflect.TypeFor[result.MarkName]():  words(result.MarkNames()...),
		reflect.TypeFor[result.StageKind](): words(result.Wait, result.Oven, result.HeatedZone, result.CoolingZone,
			result.Rest),
		reflect.TypeFor[plan.Direction]():       words(plan.Highest, plan.Lowest),
		reflect.TypeFor[plan.Bound]():           words(plan.ByCriterion, plan.ByRange, plan.Nowhere),
		reflect.TypeFor[plan.Shape]():           words(plan.Normal, plan.Uniform),
		reflect.TypeFor[plan.CapacityBasis]():   words(plan.LargestLoad, plan.StatedLoad, plan.LineRate, plan.NoCapacity),
		reflect.TypeFor[plan.TermName]():        words(plan.EnergyCost, plan.LabourCost, plan.AttendCost, plan.FloorCost, plan.RackCost, plan.Depreciation),
		reflect.TypeFor[plan.TermPer]():         words(plan.PerArea, plan.PerCharge, plan.PerUnitDay, plan.PerHour),
		reflect.TypeFor[plan.Objective]():       words(plan.LeastEnergy, plan.LeastCost),
		reflect.TypeFor[result.CriterionName](): words(result.CriterionNames()...),
		reflect.TypeFor[result.Per]():           words(result.PerSecond, result.PerRun),
		reflect.TypeFor[result.Severity]():      words(result.Notice, result.Danger),
		reflect.TypeFor[derive.Kind](): words(derive.Comb, derive.Sprayed, derive.Dried, derive.Flow, derive.WetBulb, derive.DewPoint, derive.Weighed,
			derive.AddOn, derive.FibreCount),
		reflect.TypeFor[trial.Kind](): words(trial.Weight, trial.Recorder, trial.Cure, trial.Sorption),
		reflect.TypeFor[trial.Quantity](): words(trial.Unknown, trial.Time, trial.Mass, trial.Coupon, trial.AirTemperature, trial.PartTemperature,
			trial.Temperature, trial.Start, trial.Conversion, trial.Passed, trial.Humidity, trial.Water, trial.Ignored),
		reflect.TypeFor[fault.Code](): words(fault.Missing, fault.Type, fault.Unknown, fault.Range, fault.Choice,
			fault.Conflict, fault.Version, fault.Syntax, fault.Limit, fault.Numeric),
	}
}

func words[T ~string](values ...T) []string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = string(v)
	}
	return out
}
