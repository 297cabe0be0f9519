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
    public static void AddSheetRules<T>(this AbstractValidator<T> rules, UnitSystem units)
        where T : ISheetInput
    {
        rules.RuleFor(sheet => sheet.Material).SetValidator(new MaterialInputRules(units));
        rules.RuleFor(sheet => sheet.Thickness).Within(Ranges.Thickness, units);
        rules.RuleFor(sheet => sheet).Custom(CheckThickness);
    }

    /// <summary>The gauge system in force, or null where none is named and the material has none of its own.</summary>
    /// <param name="sheet">The sheet.</param>
    public static string? GaugeSystemOf(ISheetInput sheet) =>
        sheet.GaugeSystem
        ?? (sheet.Material.Id is { } id && MaterialCatalog.Default.TryFind(id, out var material) ? material.GaugeSystem : null);

    private static void CheckThickness<T>(T sheet, ValidationContext<T> context)
        where T : ISheetInput
    {
        if (sheet.Gauge is { } gauge)
        {
            if (sheet.Thickness is not null)
            {
                context.FaultAt(
                    "gauge", "choose-one", "Give thickness or gauge, not both.", "thickness or gauge, not both");
            }
            else
            {
                CheckGauge(sheet, gauge, context);
            }
        }
        else if (sheet.Thickness is null)
        {
            context.FaultAt("thickness", "choose-one", "The sheet has no thickness.", "thickness, or gauge");
        }
        else if (sheet.GaugeSystem is not null)
        {
            context.FaultAt("gaugeSystem", "not-applicable", "gaugeSystem needs gauge.", "only with gauge");
        }
    }

    private static void CheckGauge<T>(T sheet, int gauge, ValidationContext<T> context)
        where T : ISheetInput
    {
        var systems = "one of " + string.Join(", ", GaugeTable.Systems.Select(known => known.Id));
        var systemId = GaugeSystemOf(sheet);
        var system = GaugeTable.Systems.FirstOrDefault(known => known.Id == systemId);
        if (systemId is null)
        {
            context.FaultAt(
                "gaugeSystem", "choose-one", "gauge needs gaugeSystem here: this material has none, and the same number is another thickness in each.", systems);
        }
        else if (system is null)
        {
            context.FaultAt("gaugeSystem", "unknown-gauge-system", "Unknown gauge system.", systems);
        }
        else if (!GaugeTable.TryThickness(systemId, gauge, out _))
        {
            var listed = system.Thicknesses.Select(thickness => thickness.Gauge.ToString(CultureInfo.InvariantCulture));
            context.FaultAt("gauge", "unknown-gauge", $"The system {systemId} lists no such gauge.", "one of " + string.Join(", ", listed));
        }
    }
}
