using System.Globalization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Drawing.Csv;

namespace FormApi.Features.Comparisons;

/// <summary>A comparison as a table.</summary>
internal static class ComparisonTable
{
    /// <summary>The headings, units among them.</summary>
    /// <param name="answer">The comparison.</param>
    /// <param name="units">Its units.</param>
    public static IEnumerable<string> Headings(ComparisonAnswer answer, UnitSystem units)
    {
        var (length, force) = (units.LengthName, units.ForceName);
        return
        [
            "row",
            .. answer.Vary,
            "best", "verdict", "not passed", "folds", "stop settings", "sweep [deg]",
            $"radius, low [{length}]", $"radius [{length}]", $"radius, high [{length}]", $"ripple [{length}]", $"pull [{force}]",
            $"panel blank, length [{length}]", $"panel blank, width [{length}]",
            $"form blank, length [{length}]", $"form blank, width [{length}]", $"form thickness [{length}]",
            "build [min]", "cost", "problem",
        ];
    }

    /// <summary>The cells of a row.</summary>
    /// <param name="row">The row.</param>
    /// <param name="best">Numbers of the best rows.</param>
    public static IEnumerable<string> Cells(ComparedRow row, int[] best) =>
    [
        row.Row.ToString(CultureInfo.InvariantCulture),
        .. row.Values.Select(value => value.Json.Trim('"')),
        best.Contains(row.Row) ? "true" : "false",
        row.Verdict is { } verdict ? Wire.Word(verdict) : "",
        string.Join(' ', row.NotPassed ?? []),
        Number(row.Folds), Number(row.StopSettings), Number(row.Sweep),
        Number(row.Radius?.Low), Number(row.Radius?.Value), Number(row.Radius?.High), Number(row.Ripple), Number(row.Pull),
        Number(row.PanelBlank?.First), Number(row.PanelBlank?.Second),
        Number(row.FormBlank?.First), Number(row.FormBlank?.Second), Number(row.FormThickness),
        Number(row.BuildMinutes), Number(row.Cost),
        row.Problem?.Detail ?? "",
    ];

    private static string Number(double? value) => value is { } known ? CsvText.Number(known) : "";
}
