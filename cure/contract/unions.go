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
		reflect.TypeFor[job.Back]():        members(job.BackExposed, job.BackInsulated, job.BackCoated),
		reflect.TypeFor[job.Orientation](): members(job.Vertical, job.FacingUp, job.FacingDown),
		reflect.TypeFor[job.TransferKind](): members(job.Given, job.ParallelFlow, job.Natural, job.Combined,
			job.SlotNozzles, job.RoundNozzles),
		reflect.TypeFor[job.Mechanism]():    members(job.LiquidDiffusion, job.PorousSkin),
		reflect.TypeFor[job.IsothermKind](): members(job.IsothermGAB, job.IsothermFloryHuggins),
		reflect.TypeFor[job.ZoneKind]():     members(job.Heated, job.Cooling),
		reflect.TypeFor[job.FitKind]():      members(job.WeightFit, job.RecorderFit, job.CureFit, job.SorptionFit),
		reflect.TypeFor[job.FieldKind]():    members(job.KindNumber, job.KindText, job.KindChoice, job.KindSwitch),
		reflect.TypeFor[result.Kind]():      members(result.Room, result.StaticOven, result.Tunnel),
		reflect.TypeFor[result.Verdict]():   members(result.InTime, result.TooLate, result.NotReached, result.AtRisk),
		reflect.TypeFor[result.MarkName]():  members(result.MarkNames()...),
		reflect.TypeFor[result.StageKind](): members(result.Wait, result.Oven, result.HeatedZone, result.CoolingZone,
			result.Rest),
		reflect.TypeFor[plan.Direction]():       members(plan.Highest, plan.Lowest),
		reflect.TypeFor[plan.Bound]():           members(plan.ByCriterion, plan.ByRange, plan.Nowhere),
		reflect.TypeFor[plan.Shape]():           members(plan.Normal, plan.Uniform),
		reflect.TypeFor[plan.CapacityBasis]():   members(plan.LargestLoad, plan.StatedLoad, plan.LineRate, plan.NoCapacity),
		reflect.TypeFor[plan.TermName]():        members(plan.EnergyCost, plan.LabourCost, plan.AttendCost, plan.FloorCost, plan.RackCost, plan.Depreciation),
		reflect.TypeFor[plan.TermPer]():         members(plan.PerArea, plan.PerCharge, plan.PerUnitDay, plan.PerHour),
		reflect.TypeFor[plan.Objective]():       members(plan.LeastEnergy, plan.LeastCost),
		reflect.TypeFor[result.CriterionName](): members(result.CriterionNames()...),
		reflect.TypeFor[result.Per]():           members(result.PerSecond, result.PerRun),
		reflect.TypeFor[result.Severity]():      members(result.Notice, result.Danger),
		reflect.TypeFor[derive.Kind](): members(derive.Comb, derive.Sprayed, derive.Dried, derive.Flow, derive.WetBulb, derive.DewPoint, derive.Weighed,
			derive.AddOn, derive.FibreCount),
		reflect.TypeFor[trial.Kind](): members(trial.Weight, trial.Recorder, trial.Cure, trial.Sorption),
		reflect.TypeFor[trial.Quantity](): members(trial.Unknown, trial.Time, trial.Mass, trial.Coupon, trial.AirTemperature, trial.PartTemperature,
			trial.Temperature, trial.Start, trial.Conversion, trial.Passed, trial.Humidity, trial.Water, trial.Ignored),
		reflect.TypeFor[fault.Code](): members(fault.Missing, fault.Type, fault.Unknown, fault.Range, fault.Choice,
			fault.Conflict, fault.Version, fault.Syntax, fault.Limit, fault.Numeric),
	}
}

func members[T ~string](values ...T) []string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = string(v)
	}
	return out
}
