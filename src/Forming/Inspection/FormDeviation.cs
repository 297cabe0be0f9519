using Forming.Layout;
using Forming.Numerics;
using Forming.Results;

namespace Forming.Inspection;

/// <summary>How far a folded form is off its plan, the lead-in held.</summary>
/// <param name="Ends">What is seen: one section where the folds are parallel, else the near end and the far one.</param>
/// <param name="FitTurn">How far the form had to be turned for the best fit of all mold lines; right-handed about the folds.</param>
/// <param name="Closing">
/// How far the lead-out turns too far about the last fold line; of parallel folds the error of their sum. Positive is folded too far.
/// </param>
public sealed record FormDeviation(IReadOnlyList<EndDeviation> Ends, Angle FitTurn, Angle Closing)
{
    /// <summary>
    /// How far the lead-out turns about its own direction, square to the last fold line; null where the folds are parallel.
    /// </summary>
    public Angle? Twist { get; init; }

    /// <summary>How far it turns in its own plane, and the last fold line with it; null where the folds are parallel.</summary>
    public Angle? Skew { get; init; }

    /// <summary>Largest miss of a mold line with the first flat held [mm].</summary>
    public double LargestHeldMm => Ends.Max(end => end.Misses.Max(miss => miss.Held.Length));

    /// <summary>Largest miss of a mold line after the rigid fit [mm].</summary>
    public double LargestFittedMm => Ends.Max(end => end.Misses.Max(miss => miss.FittedMm));

    /// <summary>Of parallel folds.</summary>
    /// <param name="built">The form as it was measured.</param>
    /// <param name="planned">The form as it should be.</param>
    public static FormDeviation Of(FoldedPolygon built, FoldedPolygon planned)
    {
        var (wanted, found) = (planned.Vertices(), built.Vertices());
        var fit = RigidFit.Of(found[1..^1], wanted[1..^1]);
        double turn = 0;
        var inward = new Point3[planned.Folds + 1];
        for (var j = 0; j < inward.Length; j++)
        {
            inward[j] = InSection(Point.Along(turn).Left());
            turn += j < planned.Folds ? planned.FoldAngles[j] : 0;
        }

        return new(
            [new([.. found.Select(InSection)], [.. wanted.Select(InSection)], [.. fit.MissesMm], inward)],
            fit.Turn,
            new(built.Sweep - planned.Sweep));
    }

    /// <summary>Of folds that are not parallel.</summary>
    /// <param name="built">The form as it was measured.</param>
    /// <param name="planned">The form as it should be.</param>
    public static FormDeviation Of(HingedForm built, HingedForm planned)
    {
        var (wanted, found) = (planned.Folded(), built.Folded());
        var (n, line) = (planned.Folds, wanted.LineOf(planned.Folds - 1));
        Point3[] places = [.. Inner(found.Near), .. Inner(found.Far)];
        // Lines that nearly coincide may cross anywhere, or nowhere.
        Finite.Of(places.Sum(place => place.Length));
        var fit = SpaceFit.Of(places, [.. Inner(wanted.Near), .. Inner(wanted.Far)]);
        double[] left = [.. fit.Misses.Select(miss => miss.Length)];
        Point3[] inward = [.. Enumerable.Range(0, n + 1).Select(wanted.Inward)];
        var turn = found.Motions[^1].TurnFrom(wanted.Motions[^1]);
        return new(
            [new(found.Near, wanted.Near, left[..n], inward), new(found.Far, wanted.Far, left[n..], inward)],
            new(Math.CopySign(fit.Turn.Length, fit.Turn.Dot(line))),
            new(turn.Dot(line)))
        {
            Twist = new(turn.Dot(wanted.Inward(n).Cross(line))),
            Skew = new(turn.Dot(wanted.Inward(n))),
        };

        static IEnumerable<Point3> Inner(IReadOnlyList<Point3> edge) => edge.Skip(1).SkipLast(1);
    }

    /// <summary>Where it leaves its wanted curve.</summary>
    /// <param name="toleranceMm">How far off a mold line may lie [mm].</param>
    /// <returns>The first facet whose far end is past tolerance, or null.</returns>
    public Departure? DepartureBeyond(double toleranceMm)
    {
        // The curve ends at the last fold: at the far end of a long lead-out, an angle within its tolerance lies far off.
        for (var i = 0; i + 1 < Ends[0].Misses.Count; i++)
        {
            var off = Ends.Select(end => end.Misses[i + 1].Held.Dot(end.Inward[i + 1])).MaxBy(Math.Abs);
            if (Math.Abs(off) > toleranceMm + CorrectionSearch.Slack)
                return new(i + 1, off);
        }

        return null;
    }

    private static Point3 InSection(Point point) => new(point.X, point.Y, 0);
}

/// <summary>One end of a form, or its section, against the plan.</summary>
public sealed record EndDeviation
{
    /// <summary>Compares.</summary>
    /// <param name="built">[n + 2] start, mold lines and end as measured [mm].</param>
    /// <param name="planned">[n + 2] the same as planned [mm].</param>
    /// <param name="fittedMm">[n] what is left at the mold lines after the best fit [mm].</param>
    /// <param name="inward">[n + 1] square to each planned flat, to the inside.</param>
    public EndDeviation(
        IReadOnlyList<Point3> built, IReadOnlyList<Point3> planned, IReadOnlyList<double> fittedMm, IReadOnlyList<Point3> inward)
    {
        (Built, Planned, Inward) = (built, planned, inward);
        Misses = [.. fittedMm.Select((fitted, i) => new VertexMiss(built[i + 1] - planned[i + 1], fitted))];
    }

    /// <summary>[n + 2] start, mold lines and end as measured [mm].</summary>
    public IReadOnlyList<Point3> Built { get; }

    /// <summary>[n + 2] the same as planned [mm].</summary>
    public IReadOnlyList<Point3> Planned { get; }

    /// <summary>[n + 1] square to each planned flat, to the inside of the form.</summary>
    public IReadOnlyList<Point3> Inward { get; }

    /// <summary>[n] how far every mold line lies off.</summary>
    public IReadOnlyList<VertexMiss> Misses { get; }

    /// <summary>How far the end of the lead-out is off [mm].</summary>
    public Point3 EndMiss => Built[^1] - Planned[^1];
}

/// <summary>How far a mold line lies from where it should be.</summary>
/// <param name="Held">Off with the first flat fixed [mm], in the frame of the lead-in.</param>
/// <param name="FittedMm">Distance after the least-squares rigid fit of all mold lines [mm].</param>
public readonly record struct VertexMiss(Point3 Held, double FittedMm);
