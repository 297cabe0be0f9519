using FormApi.Http.Units;
using Forming;
using Forming.Jobs;
using Forming.Plans.Choices;
using Forming.Results;
using GaugeTable = Forming.Materials.Gauges;

namespace FormApi.Features.Forms;

/// <summary>Chooses the form's sheet and the brake's length where a request leaves them open: by quick plans of the same job.</summary>
internal static class FormChoices
{
    private const double RibbedMm = 1.5;
    private const int RibbedGauge = 16;

    // What a shop stocks; a form is folded by hand, so no thicker than an eighth of an inch.
    private static readonly double[] Millimetres = [0.8, 1, 1.2, RibbedMm, 2, 2.5, 3];
    private static readonly int[] GaugeNumbers = [22, 20, 18, RibbedGauge, 14, 12, 11];

    /// <summary>The request with sheet and brake chosen.</summary>
    /// <param name="request">The request with every other default filled in.</param>
    /// <param name="units">The caller's units.</param>
    public static FormRequest Filled(FormRequest request, UnitSystem units)
    {
        if (request.Form!.IsSheetOpen())
            request = WithSheet(request, units);
        if (request.Form!.FoldRadius is null)
        {
            var thickness = units.Length(FormSpecs.SheetFrom(request.Form, units).ThicknessMm);
            request = request with { Form = request.Form with { FoldRadius = thickness } };
        }

        return request.Brake!.Length is null
            ? request with { Brake = request.Brake with { Length = LongestFold(request, units) } }
            : request;
    }

    /// <summary>Thickness of the thinnest sheet that is ever chosen [mm].</summary>
    public static double ThinnestMm => Millimetres[0];

    private static FormRequest WithSheet(FormRequest request, UnitSystem units)
    {
        var form = request.Form!;
        FormInput[] sheets = [.. SheetsOf(form, units)
            .Where(sheet => form.NeutralFactor is not null || form.FoldRadius is not { } radius
                || FitsFold(units.ToMm(radius), FormSpecs.SheetFrom(sheet, units).ThicknessMm))];
        double[] thicknesses = [.. sheets.Select(sheet => FormSpecs.SheetFrom(sheet, units).ThicknessMm)];
        var ribbed = Array.FindIndex(sheets, sheet => sheet.Thickness == RibbedMm || sheet.Gauge == RibbedGauge);
        var thinnest = sheets[0] with
        {
            FoldRadius = form.FoldRadius ?? units.Length(thicknesses[0]),
            Backing = form.Backing ?? FormBacking.None,
        };
        var job = JobOf(request with { Form = thinnest }, units);
        var (place, backing) = OpenChoices.SheetOf(
            job,
            thicknesses,
            thickness => form.FoldRadius is { } given ? units.ToMm(given) : thickness,
            ribbed < 0 ? sheets.Length - 1 : ribbed,
            mayRib: form.Backing is null);
        return request with { Form = sheets[place] with { Backing = backing } };
    }

    // No published neutral factor applies to a sharper fold, unless the caller gives one.
    private static bool FitsFold(double radiusMm, double thicknessMm) => radiusMm >= WorkingLimits.LeastRadiusOverThickness * thicknessMm;

    private static IEnumerable<FormInput> SheetsOf(FormInput form, UnitSystem units) =>
        units.Unit == LengthUnit.In && SheetRules.GaugeSystemOf(form) is { } system && GaugeTable.Systems.Any(known => known.Id == system)
            ? GaugeNumbers.Where(gauge => GaugeTable.TryThickness(system, gauge, out _))
                .Select(gauge => form with { Gauge = gauge, GaugeSystem = system })
            : Millimetres.Select(thickness => form with { Thickness = units.Length(thickness) });

    private static double LongestFold(FormRequest request, UnitSystem units) => request.Panel.Curve is TaperInput
        ? Math.Ceiling(units.Length(OpenChoices.LongestFoldMm(JobOf(request, units))))
        : request.Form!.Width!.Value;

    // The brake's length moves nothing that is chosen here.
    private static FormJob JobOf(FormRequest request, UnitSystem units) =>
        FormSpecs.From(request with { Brake = request.Brake! with { Length = request.Brake.Length ?? units.Length(1) } }).Job;
}
