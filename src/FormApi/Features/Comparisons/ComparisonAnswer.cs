using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using Forming.Plans;

namespace FormApi.Features.Comparisons;

/// <summary>Many variants of one request side by side. Lengths, forces and money are in the units of the request.</summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Vary">What was varied, in the order of each row's values.</param>
/// <param name="Rows">A row for every combination, the last list of values changing fastest.</param>
/// <param name="Best">Numbers of the rows that none beats in folds, ripple and build minutes together; only rows that can be made.</param>
internal sealed record ComparisonAnswer(string Engine, string Fingerprint, string[] Vary, ComparedRow[] Rows, int[] Best);

/// <summary>One combination. Everything but its values is null where it has a problem.</summary>
/// <param name="Row">Its number, from 1.</param>
/// <param name="Values">What was put in.</param>
/// <param name="Verdict">The verdict of its checks.</param>
/// <param name="NotPassed">Ids of the checks that warn or fail.</param>
/// <param name="Folds">Number of folds.</param>
/// <param name="StopSettings">How many settings of the stop they take.</param>
/// <param name="Sweep">Sweep that comes off [°]; null on a taper, or where nothing was pulled.</param>
/// <param name="Radius">Band of the radius over the middle folds [mm or in]; null where flat or not known.</param>
/// <param name="Ripple">Largest height of the facets that will show [mm or in]; null where not known.</param>
/// <param name="Pull">Largest pull [N or lbf].</param>
/// <param name="PanelBlank">Length and width of the panel's blank [mm or in].</param>
/// <param name="FormBlank">Length and width of the form's blank [mm or in].</param>
/// <param name="FormThickness">Thickness of the form's sheet [mm or in].</param>
/// <param name="BuildMinutes">Minutes to build the form, by the rates of the request or assumed ones.</param>
/// <param name="Cost">Price of the first count of pieces, one unless the request says so [money].</param>
/// <param name="Problem">Why there is no row; pointers start at the varied request.</param>
internal sealed record ComparedRow(
    int Row,
    AnyValue[] Values,
    [property: JsonConverter(typeof(WordConverter<PlanVerdict>))] PlanVerdict? Verdict = null,
    string[]? NotPassed = null,
    int? Folds = null,
    int? StopSettings = null,
    double? Sweep = null,
    OutlookBandResult? Radius = null,
    double? Ripple = null,
    double? Pull = null,
    Pair? PanelBlank = null,
    Pair? FormBlank = null,
    double? FormThickness = null,
    double? BuildMinutes = null,
    double? Cost = null,
    Problem? Problem = null);
