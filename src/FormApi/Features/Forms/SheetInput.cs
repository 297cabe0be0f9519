using System.Globalization;
using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Materials;
using GaugeTable = Forming.Materials.Gauges;

namespace FormApi.Features.Forms;

/// <summary>A sheet as a request states it: a material, and a thickness or a gauge.</summary>
internal interface ISheetInput
{
    /// <summary>The material.</summary>
    MaterialInput Material { get; }

    /// <summary>Thickness, or null with a gauge.</summary>
    double? Thickness { get; }

    /// <summary>Gauge number, or null with a thickness.</summary>
    int? Gauge { get; }

    /// <summary>The gauge's system, or null for the material's own.</summary>
    string? GaugeSystem { get; }
}

/// <summary>What must hold for every sheet.</summary>
internal static class SheetRules
{
    /// <summary>Adds the rules of a sheet.</summary>
    /// <typeparam name="T">The record that states the sheet.</typeparam>
    /// <param name="rules">The rules of that record.</param>
    /// <param name="units">The caller's units.</param>
    /// <param name="mayBeOpen">Whether the thickness may be left to the service.</param>
    public static void AddSheetRules<T>(this AbstractValidator<T> rules, UnitSystem units, bool mayBeOpen = false)
        where T : ISheetInput
    {
        rules.RuleFor(sheet => sheet.Material).SetValidator(new MaterialInputRules(units));
        rules.RuleFor(sheet => sheet.Thickness).Within(Ranges.Thickness, units);
        rules.RuleFor(sheet => sheet.Gauge).Null()
            .Else("choose-one", "Give thickness or gauge, not both.", "thickness or gauge, not both")
            .When(sheet => sheet.Thickness is not null);
        if (!mayBeOpen)
        {
            rules.RuleFor(sheet => sheet.Thickness).NotNull().Else("choose-one", "The sheet has no thickness.", "thickness, or gauge")
                .When(sheet => sheet.Gauge is null);
        }

        rules.RuleFor(sheet => sheet.GaugeSystem).Null().Else("not-applicable", "gaugeSystem needs gauge.", "only with gauge")
            .When(sheet => sheet.Gauge is null && (mayBeOpen || sheet.Thickness is not null));
        rules.When(sheet => sheet.Gauge is not null && sheet.Thickness is null, () => AddGaugeRules(rules));
    }

    /// <summary>The gauge system in force, or null where none is named and the material has none of its own.</summary>
    /// <param name="sheet">The sheet.</param>
    public static string? GaugeSystemOf(ISheetInput sheet) =>
        sheet.GaugeSystem
        ?? (sheet.Material.Id is { } id && MaterialCatalog.Default.TryFindNamed(id, out var material) ? material.GaugeSystem : null);

    private static void AddGaugeRules<T>(AbstractValidator<T> rules)
        where T : ISheetInput
    {
        var systems = "one of " + string.Join(", ", GaugeTable.Systems.Select(known => known.Id));
        rules.RuleFor(sheet => sheet.GaugeSystem)
            .Must((sheet, _) => GaugeSystemOf(sheet) is not null)
            .Else("choose-one", "gauge needs gaugeSystem here: this material has none, and the same number is another thickness in each.", systems)
            .Must((sheet, _) => GaugeSystemOf(sheet) is null || Find(GaugeSystemOf(sheet)) is not null)
            .Else("unknown-gauge-system", "Unknown gauge system.", systems);
        rules.RuleFor(sheet => sheet.Gauge)
            .Must((sheet, gauge) => Find(GaugeSystemOf(sheet)) is not { } system || GaugeTable.TryThickness(system.Id, gauge!.Value, out _))
            .Else("unknown-gauge", sheet => $"The system {GaugeSystemOf(sheet)} lists no such gauge.", sheet => "one of " + string.Join(", ", Listed(sheet)));

        static GaugeSystem? Find(string? id) => GaugeTable.Systems.FirstOrDefault(known => known.Id == id);

        static IEnumerable<string> Listed(T sheet) =>
            Find(GaugeSystemOf(sheet))!.Thicknesses.Select(thickness => thickness.Gauge.ToString(CultureInfo.InvariantCulture));
    }
}
