using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;
using Forming.Springback;

namespace Forming.Programs.Brakes;

/// <summary>The form as a brake sees it: flats and folds.</summary>
/// <param name="StraightsMm">[n + 1] straight parts, lead-in and lead-out among them; of a taper at their narrower ends [mm].</param>
/// <param name="FoldAngles">[n] fold angles after springback [rad], &gt; 0.</param>
/// <param name="StopAngles">[n] angles under load [rad], at least the fold angles.</param>
/// <param name="Shape">Shape of every fold.</param>
/// <param name="WidthMm">Length of the folds, of the longest of a taper [mm].</param>
/// <param name="UltimateMpa">Ultimate strength of the sheet [MPa].</param>
/// <param name="StopResolution">Smallest step of the stop.</param>
public sealed record ProgramPart(
    double[] StraightsMm,
    double[] FoldAngles,
    double[] StopAngles,
    FoldShape Shape,
    double WidthMm,
    double UltimateMpa,
    Angle StopResolution)
{
    /// <summary>How stop angles are rounded to the steps of the stop.</summary>
    public StopRounding Rounding { get; init; }

    /// <summary>Growth of the stop angle with the fold angle, &gt; 0.</summary>
    public double StopSlope { get; init; } = 1;

    /// <summary>What its sheet is called.</summary>
    public string MaterialName { get; init; } = "this sheet";

    /// <summary>Where the fold lines of a taper lie on its flat; null where they are parallel.</summary>
    public TaperFlat? Flat { get; init; }

    /// <summary>What rounding the stop angles adds to the whole form: above 0 it closes too far.</summary>
    public Angle StopRounding => StopSettings.Closing(StopAngles, StopSteps().Select(steps => steps * StopResolution.Radians), StopSlope);

    /// <summary>Number of folds.</summary>
    public int Folds => FoldAngles.Length;

    /// <summary>Sum of the fold angles [rad].</summary>
    public double TotalTurn => FoldAngles.Sum();

    /// <summary>The part of a planned form.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="job">What it was planned from.</param>
    /// <remarks>A fold that stays elastic has no stop angle; its plan has failed, and here it has its fold angle.</remarks>
    public static ProgramPart Of(FormPlan plan, FormJob job)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(job);
        var form = job.Form;
        var shape = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, plan.Form.NeutralFactor);
        double[] angles = [.. plan.Form.Stations.Select(station => station.FoldAngle.Radians)];
        return new(
            [form.LeadInMm - shape.Setback(angles[0]), .. plan.Form.Stations.Select(NarrowestAfter)],
            angles,
            [.. plan.Form.Stations.Select(station => (station.StopAngle ?? station.FoldAngle).Radians)],
            shape,
            plan.Taper is null ? form.WidthMm : plan.Form.Stations.Max(station => station.Line!.LengthMm),
            form.Sheet.Material.UltimateMpa,
            job.Brake.StopResolution)
        {
            Rounding = form.StopRounding,
            StopSlope = form.SpringbackOf(shape, BendingLaw.Of(form.Sheet), job.Brake).Line?.Slope ?? 1,
            MaterialName = form.Sheet.Material.Name,
            Flat = plan.Taper is null ? null : TaperFlat.Of(plan.Form, job.Marks),
        };

        static double NarrowestAfter(Station station) =>
            station.Line is { } line ? Math.Min(line.StraightNearMm, line.StraightFarMm) : station.StraightAfterMm;
    }

    /// <summary>Refuses what is no part.</summary>
    /// <exception cref="ArgumentException">No folds, or more than are distinguished; lists of different lengths; a value that cannot
    /// be.</exception>
    internal void Check()
    {
        var isPart = Folds is > 0 and <= FoldSet.MostFolds && StopAngles.Length == Folds && StraightsMm.Length == Folds + 1
            && StraightsMm.All(IsPositive)
            && FoldAngles.All(IsPositive)
            && StopAngles.Zip(FoldAngles).All(pair => pair.First >= pair.Second && pair.First < Math.PI)
            && IsPositive(Shape.ThicknessMm) && Shape.RadiusMm >= 0 && IsPositive(Shape.NeutralRadiusMm)
            && (Flat is null || Flat.Lines.Count == Folds)
            && IsPositive(WidthMm) && IsPositive(UltimateMpa) && IsPositive(StopResolution.Radians);
        if (!isPart)
            throw new ArgumentException($"Not a part: 1 to {FoldSet.MostFolds} folds, a flat on either side of each, every value above 0, stop angles from the fold's to half a turn.");

        static bool IsPositive(double figure) => figure > 0 && double.IsFinite(figure);
    }

    /// <summary>[n] steps of the stop that each fold is set to.</summary>
    internal long[] StopSteps() => StopSettings.Steps(FoldAngles, StopAngles, StopResolution.Radians, Rounding);

    /// <summary>Length of a fold [mm].</summary>
    /// <param name="fold">Its index, from 0.</param>
    public double LengthOf(int fold) => Flat?.Lines[fold].LengthMm ?? WidthMm;

    /// <summary>Centre line of a fold on the flat, from the start edge [mm]; parallel folds only.</summary>
    /// <param name="fold">Its index, from 0.</param>
    public double MarkMm(int fold) =>
        StraightsMm.Take(fold + 1).Sum() + Enumerable.Range(0, fold).Sum(Allowance) + (Allowance(fold) / 2);

    /// <summary>Neutral length of a fold [mm].</summary>
    /// <param name="fold">Its index, from 0.</param>
    public double Allowance(int fold) => Shape.BendAllowance(FoldAngles[fold]);
}

/// <summary>An edge of the part.</summary>
public enum PartEdge
{
    /// <summary>The edge of the lead-in, from which stations count.</summary>
    Start,

    /// <summary>The edge of the lead-out.</summary>
    End,
}

/// <summary>Which folds are made.</summary>
/// <param name="Bits">A bit a fold.</param>
internal readonly record struct FoldSet(UInt128 Bits)
{
    /// <summary>More folds than this are not distinguished.</summary>
    public const int MostFolds = 128;

    public static FoldSet All(int folds) => new(folds == MostFolds ? UInt128.MaxValue : (UInt128.One << folds) - 1);

    public bool Has(int fold) => ((Bits >> fold) & 1) != 0;

    public FoldSet With(int fold) => new(Bits | (UInt128.One << fold));

    public FoldSet Without(int fold) => new(Bits & ~(UInt128.One << fold));

    public int Count => (int)UInt128.PopCount(Bits);
}
