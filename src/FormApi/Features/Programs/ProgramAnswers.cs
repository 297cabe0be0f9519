using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Units;
using Forming.Programs;
using Forming.Programs.Brakes;

namespace FormApi.Features.Programs;

/// <summary>From a program to the answer, in the caller's units.</summary>
internal static class ProgramAnswers
{
    // All folds turn the sheet up, so it is never flipped.
    private const string MarkedFace = "inside";

    /// <summary>The answer to a request.</summary>
    /// <param name="job">The programmed request.</param>
    public static ProgramAnswer From(ProgrammedJob job)
    {
        var (program, units) = (job.Program, job.Units);
        return new(
            EngineVersion.Current,
            job.Shown.Fingerprint,
            job.Shown.Json,
            job.Verdict,
            new(
                program.OrderName!,
                program.Turns,
                program.HandlingCost,
                program.StopChanges,
                FormAnswers.Map(program.StopGroups, group => new StopGroupResult(UnitSystem.Degrees(group.Setting), group.Steps)),
                UnitSystem.Degrees(program.StopRounding),
                units.Length(program.Clearance.Mm),
                program.Clearance.Nearest?.Word(),
                job.Brake is PressBrake press ? units.Length(press.DieOpeningFor(job.Part.Shape.ThicknessMm)) : null,
                program.Searched == SearchedOrders.AllOrders ? "all orders" : "families",
                program.IsSearchComplete,
                OrdersOf(program, units)),
            FormAnswers.Map(program.Steps, step => StepOf(step, job.Brake is PressBrake, units)),
            FormAnswers.Map(job.Checks, check => FormAnswers.CheckOf(check, units)),
            FormAnswers.Map(program.Safety, note => new SafetyResult(note.Id, note.Level, units.Wording.Of(note.Text))),
            FormAnswers.Map(program.Basis, basis => new BasisResult(basis.Quantity, basis.Method, basis.Source, basis.Status)),
            job.Links);
    }

    /// <summary>Why there is no program.</summary>
    /// <param name="program">The program that is none.</param>
    /// <param name="units">The caller's units.</param>
    public static ImpossibleResult ImpossibleOf(BrakeProgram program, UnitSystem units) => new(
        program.Impossible!.IsProven,
        program.Impossible.States,
        FormAnswers.Map(program.Impossible.Folds, fold => new ImpossibleFoldResult(
            fold.Fold, fold.Check, fold.Strikes?.Word(), units.Wording.Of(fold.Text), FormAnswers.RemedyOf(fold.Remedy, units))),
        OrdersOf(program, units));

    private static OrderTriedResult[] OrdersOf(BrakeProgram program, UnitSystem units) => FormAnswers.Map(
        program.OrdersTried,
        order => new OrderTriedResult(
            order.Name, order.IsWhole, order.FailedFold, order.FailedCheck, order.Strikes?.Word(), order.HandlingCost, units.Length(order.ClearanceMm)));

    private static StepResult StepOf(ProgramStep step, bool isPress, UnitSystem units)
    {
        return new(
            step.Number,
            step.Fold,
            step.EdgeInFront,
            step.Handling,
            step.HandlingCost,
            step.GaugedEdge,
            step.Gauge.By,
            units.Length(step.Gauge.DistanceMm),
            step.Gauge.IsInRange,
            UnitSystem.Degrees(step.Gauge.FaceSlope),
            UnitSystem.Degrees(step.FoldAngle),
            UnitSystem.Degrees(step.StopAngle),
            UnitSystem.Degrees(step.StopSetting),
            isPress ? UnitSystem.Degrees(step.IncludedAngle) : null,
            isPress ? UnitSystem.Degrees(step.SpringbackAllowance) : null,
            step.IsStopChanged,
            units.Length(step.DepthMm),
            Force(step.Load.ForceN),
            Force(step.Load.ForceLowN),
            step.Load.MomentNmm is { } moment ? units.Torque(moment) : null,
            Force(step.Load.HandleForceN),
            Force(step.Load.LeafForceN),
            Force(step.Load.ClampForceN),
            units.Length(step.Clearance.Mm),
            step.Clearance.Nearest?.Word(),
            UnitSystem.Degrees(step.Clearance.AtAngle),
            units.Length(step.FrontRunMm),
            units.Length(step.BackRunMm),
            MarkedFace,
            units.Wording.Of(step.Text),
            FormAnswers.Map(step.Checks, check => FormAnswers.CheckOf(check, units)));

        double? Force(double? newtons) => newtons is { } known ? units.Force(known) : null;
    }
}
