using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Tolerances;

namespace FormApi.Features.Tolerances;

/// <summary>From an error budget to the answer, in the caller's units.</summary>
internal static class ToleranceAnswers
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
            FormAnswers.Map(report.Published, row => RowOf(row, units)),
            [.. report.Checks.Concat(failed).Select(check => FormAnswers.CheckOf(check, units))],
            FormAnswers.Map(report.Notes, note => new ShopNoteResult(note.Id, units.Wording.Of(note.Text))),
            FormAnswers.Map(report.Basis, basis => new BasisResult(basis.Quantity, basis.Method, basis.Source, basis.Status)),
            links);
    }

    private static EndSpreadResult EndOf(ToleranceReport report, UnitSystem units)
    {
        var planned = report.Form.Vertices()[^1];
        var (exact, first) = (report.End, report.EndFirstOrder);
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
