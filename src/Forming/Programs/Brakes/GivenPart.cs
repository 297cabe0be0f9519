using Forming.Checks;
using Forming.Folds;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Checks;
using Forming.Results;
using Forming.Springback;

namespace Forming.Programs.Brakes;

/// <summary>A part given by its folds and facets instead of a plan.</summary>
public static class GivenPart
{
    /// <summary>More folds than this no program is worked out for.</summary>
    public const int MostFolds = FoldSet.MostFolds;

    /// <summary>The part, its stop angles from the test strips' line or the first guess that a plan makes.</summary>
    /// <param name="angles">[n] fold angles after springback, &gt; 0.</param>
    /// <param name="facetsMm">[n - 1] facets between them, mold line to mold line [mm].</param>
    /// <param name="form">Its sheet, folds, leads and width.</param>
    /// <param name="brake">The brake.</param>
    /// <exception cref="NoSolutionException"><c>program.facet-too-short</c>: the folds on both sides leave a facet no straight part;
    /// <c>program.stays-elastic</c>: folds this round spring back wholly.</exception>
    public static ProgramPart Of(IReadOnlyList<Angle> angles, IReadOnlyList<double> facetsMm, FormSpec form, BrakeSpec brake)
    {
        ArgumentNullException.ThrowIfNull(angles);
        ArgumentNullException.ThrowIfNull(facetsMm);
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(brake);
        var factor = form.NeutralFactor ?? NeutralLine.Factor(form.FoldRadiusMm, form.Sheet.ThicknessMm);
        var shape = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, factor);
        var springback = form.SpringbackOf(shape, BendingLaw.Of(form.Sheet), brake);
        if (springback.Line is null)
        {
            throw new NoSolutionException(
                "program.stays-elastic",
                "form.foldRadius",
                $"folds this round stay elastic in {form.Sheet.Material.Name} and spring back wholly",
                $"a smaller fold radius");
        }

        double[] setbacks = [.. angles.Select(angle => shape.Setback(angle.Radians))];
        var straights = new double[angles.Count + 1];
        straights[0] = Straight(form.LeadInMm, setbacks[0], "form.leadIn");
        for (var i = 1; i < angles.Count; i++)
            straights[i] = Straight(facetsMm[i - 1], setbacks[i - 1] + setbacks[i], FormattableString.Invariant($"stations[{i - 1}].facetAfter"));
        straights[^1] = Straight(form.LeadOutMm, setbacks[^1], FormattableString.Invariant($"stations[{angles.Count - 1}].facetAfter"));
        return new(
            straights,
            [.. angles.Select(angle => angle.Radians)],
            [.. angles.Select(angle => springback.StopAngle(angle)!.Value.Radians)],
            shape,
            form.WidthMm,
            form.Sheet.Material.UltimateMpa,
            brake.StopResolution)
        {
            Rounding = form.StopRounding,
            StopSlope = springback.Line.Slope,
            MaterialName = form.Sheet.Material.Name,
        };
    }

    /// <summary>What a plan would have failed of the folds themselves; the brake's own checks are the program's.</summary>
    /// <param name="part">The part.</param>
    /// <param name="facetsMm">[n - 1] facets between its folds, mold line to mold line [mm].</param>
    /// <param name="form">The form.</param>
    /// <param name="brake">The brake.</param>
    public static IReadOnlyList<Check> Checks(ProgramPart part, IReadOnlyList<double> facetsMm, FormSpec form, BrakeSpec brake)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(facetsMm);
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(brake);
        var sheet = form.Sheet;
        var radius = MinimumRadius.For(sheet.Material, form.Grain == Grain.Across, sheet.ThicknessMm);
        var narrowest = facetsMm.Append(form.LeadInMm).Append(form.LeadOutMm).Min();
        var straight = part.StraightsMm.Min();
        return
        [
            PlanChecks.AtLeast(
                CheckIds.MinimumFacet,
                Verdict.Fail,
                narrowest,
                brake.MinFacetMm,
                $"the narrowest facet or lead is {Figure.Length(narrowest)}",
                () => $"facets and leads of at least {Figure.Length(brake.MinFacetMm)}"),
            PlanChecks.AtLeast(
                CheckIds.StraightPart,
                Verdict.Fail,
                straight,
                sheet.ThicknessMm,
                $"the shortest straight part, of a facet or a lead, is {Figure.Length(straight)} between bend tangent lines",
                () => $"wider facets or a smaller fold radius, until every straight part reaches {Figure.Length(sheet.ThicknessMm)}"),
            PlanChecks.AtLeast(
                CheckIds.FoldRadius,
                Verdict.Fail,
                form.FoldRadiusMm,
                radius,
                $"the folds have an inside radius of {Figure.Length(form.FoldRadiusMm)}; {sheet.Material.Name} takes {Figure.Length(radius)} or more",
                () => $"a fold radius of at least {Figure.Length(radius)}, or a thinner or softer form sheet"),
        ];
    }

    /// <summary>Refuses stop angles that no swing comes back from as a fold: below the fold angle, or past half a turn.</summary>
    /// <param name="part">The part.</param>
    /// <param name="brake">The brake.</param>
    /// <exception cref="NoSolutionException"><c>program.springs-inwards</c>; <c>program.stop-past-half-turn</c>.</exception>
    public static void RefuseStops(ProgramPart part, ProgramBrake brake)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(brake);
        for (var i = 0; i < part.Folds; i++)
        {
            var (angle, stop) = (part.FoldAngles[i], part.StopAngles[i]);
            if (stop < angle)
            {
                throw new NoSolutionException(
                    "program.springs-inwards",
                    "form.stop",
                    $"the stop's line sets {Figure.Angle(stop)} for fold {i + 1} of {Figure.Angle(angle)}: a fold springs open, not shut",
                    $"a line of the stop that lies above the fold angles");
            }

            if (stop + brake.OverTravel.Radians >= BrakeSpec.HalfTurn.Radians)
            {
                throw new NoSolutionException(
                    "program.stop-past-half-turn",
                    "form",
                    $"fold {i + 1} of {Figure.Angle(angle)} would be swung to {Figure.Angle(stop + brake.OverTravel.Radians)}: no brake swings through half a turn",
                    $"smaller folds, or a line of the stop that gives less");
            }
        }
    }

    private static double Straight(double facetMm, double setbacksMm, string subject) => facetMm > setbacksMm
        ? facetMm - setbacksMm
        : throw new NoSolutionException(
            "program.facet-too-short",
            subject,
            $"the folds' setbacks take {Figure.Length(setbacksMm)} of {Figure.Length(facetMm)}",
            $"more than {Figure.Length(setbacksMm)}");
}
