using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Results;
using Forming.Tolerances;

namespace FormApi.Features.Tolerances;

/// <summary>
/// What the errors of single folds and marks add up to. Frame: the first flat fixed, its start at (0, 0), heading along x, turning left;
/// contact side, sharp mold lines.
/// </summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="Folds">Folds of the form.</param>
/// <param name="Sweep">Sum of its folds as planned [°].</param>
/// <param name="Coverage">Standard deviations that intervals and checks count.</param>
/// <param name="Closing">The sum of all folds.</param>
/// <param name="End">The end of the lead-out.</param>
/// <param name="Radius">What the error of the sweep does to the mean radius; null with fewer than three folds.</param>
/// <param name="Needed">The scatter that the wanted tolerance leaves room for; null where none is wanted.</param>
/// <param name="Published">The values compared with published general tolerances.</param>
/// <param name="Checks">The wanted tolerance, met or not, and the checks that the plan itself failed.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Basis">What every headline value rests on.</param>
/// <param name="Links">The form behind it as links that hold the whole request.</param>
/// <param name="Taper">Both corners of a taper; else left out.</param>
internal sealed record ToleranceAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(ToleranceRequest))] RawJson Request,
    int Folds,
    double Sweep,
    double Coverage,
    ClosingSpreadResult Closing,
    EndSpreadResult End,
    RadiusSpreadResult? Radius,
    NeededScatterResult? Needed,
    PublishedToleranceResult[] Published,
    CheckResult[] Checks,
    ShopNoteResult[] Notes,
    [property: InFull] BasisResult[] Basis,
    [property: InFull] LinksResult Links,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] TaperSpreadResult? Taper)
{
    /// <summary>The answer to a request.</summary>
    /// <param name="report">The error budget.</param>
    /// <param name="failed">Checks that the plan itself failed.</param>
    /// <param name="links">Links of the form that was planned, if one was.</param>
    /// <param name="shown">The request with every default shown.</param>
    public static ToleranceAnswer From(ToleranceReport report, IReadOnlyList<Check> failed, LinksResult links, NormalizedRequest shown)
    {
        var units = shown.Units;
        var margin = report.Coverage * report.ClosingScatter;
        var (low, high) = (report.ClosingBias - margin, report.ClosingBias + margin);
        return new(
            EngineVersion.Current,
            shown.Fingerprint,
            shown.Json,
            report.Form.Folds,
            UnitSystem.Degrees(new Angle(report.Form.Sweep)),
            WireNumber.Of(report.Coverage),
            new(
                UnitSystem.Degrees(report.ClosingBias),
                UnitSystem.Degrees(report.ClosingScatter),
                new(UnitSystem.Degrees(low), UnitSystem.Degrees(high)),
                UnitSystem.Degrees(report.ClosingWorst)),
            EndOf(report, units),
            report.RadiusMm is { } radius
                ? new(
                    units.Length(radius),
                    units.Length(report.RadiusWith(report.ClosingBias)),
                    units.Length(report.RadiusWith(high)),
                    units.Length(report.RadiusWith(low)))
                : null,
            report.Needed is { } needed
                ? new(UnitSystem.Degrees(needed.Closing), UnitSystem.Degrees(needed.End), UnitSystem.Degrees(needed.EndExact))
                : null,
            Lists.Map(report.Published, row => RowOf(row, units)),
            [.. report.Checks.Concat(failed).Select(check => CheckResult.From(check, units))],
            Lists.Map(report.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(report.Basis, BasisResult.From),
            links,
            report is { Twist: { } twist, Ends: [var near, var far] }
                ? new(
                    TaperCornerResult.From(near, report.Coverage, units),
                    TaperCornerResult.From(far, report.Coverage, units),
                    UnitSystem.Degrees(twist.Bias),
                    UnitSystem.Degrees(twist.Scatter))
                : null);
    }

    private static EndSpreadResult EndOf(ToleranceReport report, UnitSystem units)
    {
        var (_, corner, exact, first) = report.Ends[0];
        var planned = new Point(corner.X, corner.Y);
        return new(
            units.Point(planned),
            units.Point(planned + exact.Bias),
            units.Point(exact.Bias),
            CovarianceOf(exact.Covariance, units),
            EllipseOf(exact.Covariance, units),
            units.Length(exact.ReachMm(report.Coverage)),
            new(units.Point(first.Bias), CovarianceOf(first.Covariance, units), EllipseOf(first.Covariance, units)));
    }

    private static CovarianceResult CovarianceOf(Covariance covariance, UnitSystem units) =>
        new(units.Area(covariance.XxMm2), units.Area(covariance.YyMm2), units.Area(covariance.XyMm2));

    private static EllipseResult EllipseOf(Covariance covariance, UnitSystem units)
    {
        var ellipse = covariance.Ellipse95();
        return new(units.Length(ellipse.SemiMajorMm), units.Length(ellipse.SemiMinorMm), UnitSystem.Degrees(ellipse.Direction));
    }

    private static PublishedToleranceResult RowOf(ToleranceComparison row, UnitSystem units) => new(
        row.Standard,
        row.Class,
        row.Figure,
        units.Length(row.SizeMm),
        units.Figure(row.Expected, row.Quantity),
        units.Figure(row.Allowed, row.Quantity),
        units.NameOf(row.Quantity),
        row.Holds,
        row.Source,
        row.Status);
}

/// <summary>Error of the sum of all folds.</summary>
/// <param name="Bias">Mean [°].</param>
/// <param name="Scatter">Standard deviation [°].</param>
/// <param name="Interval">Mean less and plus the coverage times the scatter [°].</param>
/// <param name="Worst">Every fold off the same way by bias and coverage times scatter, to either side [°].</param>
internal sealed record ClosingSpreadResult(double Bias, double Scatter, Pair Interval, double Worst);

/// <summary>Where the end of the lead-out is.</summary>
/// <param name="Planned">Planned place [x, y] [mm or in].</param>
/// <param name="Expected">Mean place [x, y] [mm or in].</param>
/// <param name="Bias">Mean less planned [x, y] [mm or in].</param>
/// <param name="Covariance">Spread about the mean.</param>
/// <param name="Ellipse">Ellipse about the mean that contains 95 %.</param>
/// <param name="Reach">Length of the bias and coverage times the standard deviation in the widest direction [mm or in].</param>
/// <param name="FirstOrder">The same to first order, for comparison.</param>
internal sealed record EndSpreadResult(
    Pair Planned, Pair Expected, Pair Bias, CovarianceResult Covariance, EllipseResult Ellipse, double Reach, FirstOrderResult FirstOrder);

/// <summary>Both corners of a tapered lead-out in space: z in the lead-in, to the far end.</summary>
/// <param name="Near">The near corner; <c>end</c> shows it along z.</param>
/// <param name="Far">The far corner.</param>
/// <param name="TwistBias">Turn of the lead-out about its own direction, square to the last fold: mean [°].</param>
/// <param name="TwistScatter">Its standard deviation [°].</param>
internal sealed record TaperSpreadResult(TaperCornerResult Near, TaperCornerResult Far, double TwistBias, double TwistScatter);

/// <summary>Where a corner of a tapered lead-out lies.</summary>
/// <param name="Planned">As planned [x, y, z] [mm or in].</param>
/// <param name="Bias">Mean less planned [x, y, z] [mm or in].</param>
/// <param name="Scatter">Standard deviations [x, y, z] [mm or in].</param>
/// <param name="Reach">As of <c>end</c> [mm or in].</param>
internal sealed record TaperCornerResult(double[] Planned, double[] Bias, double[] Scatter, double Reach)
{
    /// <summary>The corner in the caller's units.</summary>
    /// <param name="end">The corner.</param>
    /// <param name="coverage">Standard deviations counted.</param>
    /// <param name="units">The caller's units.</param>
    public static TaperCornerResult From(ToleratedEnd end, double coverage, UnitSystem units) => new(
        units.Triple(end.Planned),
        units.Triple(end.Exact.BiasInSpace),
        units.Triple(end.Exact.Covariance.Deviations),
        units.Length(end.Exact.ReachMm(coverage)));
}

/// <summary>The end of the lead-out to first order about the planned polygon.</summary>
/// <param name="Bias">Mean less planned [x, y] [mm or in].</param>
/// <param name="Covariance">Spread about the mean.</param>
/// <param name="Ellipse">Ellipse about the mean that contains 95 %.</param>
internal sealed record FirstOrderResult(Pair Bias, CovarianceResult Covariance, EllipseResult Ellipse);

/// <summary>Covariance of a place.</summary>
/// <param name="Xx">Variance along x [mm² or in²].</param>
/// <param name="Yy">Variance along y [mm² or in²].</param>
/// <param name="Xy">Covariance of both [mm² or in²].</param>
internal sealed record CovarianceResult(double Xx, double Yy, double Xy);

/// <summary>An ellipse that contains 95 % of a Gaussian place.</summary>
/// <param name="SemiMajor">Larger semi-axis [mm or in].</param>
/// <param name="SemiMinor">Smaller semi-axis [mm or in].</param>
/// <param name="Direction">Direction of the larger one against the lead-in [°].</param>
internal sealed record EllipseResult(double SemiMajor, double SemiMinor, double Direction);

/// <summary>Mean radius of the form on its contact side, under load: tighter than the finished panel.</summary>
/// <param name="Planned">As planned [mm or in].</param>
/// <param name="Expected">With the mean error of the sweep [mm or in]; null where that would fold the form flat.</param>
/// <param name="Tightest">At the upper end of the closing interval [mm or in]; null where that would fold the form flat.</param>
/// <param name="Gentlest">At the lower end of the closing interval [mm or in]; null where that would fold the form flat.</param>
internal sealed record RadiusSpreadResult(double Planned, double? Expected, double? Tightest, double? Gentlest);

/// <summary>
/// Standard deviation of a fold angle that the wanted tolerance leaves room for; 0 where the bias, for the end the bias and the marks,
/// break it alone.
/// </summary>
/// <param name="Closing">For the closing angle [°].</param>
/// <param name="End">For the end, first order [°]; not shown to be on the safe side.</param>
/// <param name="EndExact">For the end by the exact form [°]; 45 where more would do.</param>
internal sealed record NeededScatterResult(double Closing, double End, double EndExact);

/// <summary>A value of the form compared with one class of a published table.</summary>
/// <param name="Standard">Name of the standard.</param>
/// <param name="Class">Its class; null where it has none.</param>
/// <param name="Figure">What is compared: <c>fold-angle</c>, <c>closing-angle</c> (legs: the leads) or <c>end-position</c> (the distance of
/// the end from the start).</param>
/// <param name="Size">Size at which the table is read [mm or in]: the shorter leg (of all folds the longest, where the limit is tightest),
/// or the length.</param>
/// <param name="Expected">Bias and coverage times scatter [° or mm or in].</param>
/// <param name="Allowed">Permissible deviation, to either side [° or mm or in]; null where the table has none for this size.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Holds">Whether the form is within it; null where the table has none.</param>
/// <param name="Source">Key of the source, as in <c>/v1/references</c>.</param>
/// <param name="Status">How the value was read.</param>
internal sealed record PublishedToleranceResult(
    string Standard,
    string? Class,
    string Figure,
    double Size,
    double Expected,
    double? Allowed,
    string Unit,
    bool? Holds,
    string Source,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status);
