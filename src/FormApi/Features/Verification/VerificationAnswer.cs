using System.Text.Json.Serialization;
using FormApi.Http;
using FormApi.Http.Json;
using Forming.Results;
using Forming.Verification;

namespace FormApi.Features.Verification;

/// <summary>Every check value, recomputed by the running engine.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Verdict">Whether every value is right.</param>
/// <param name="Checked">Number of values that were recomputed.</param>
/// <param name="Failed">Ids of the values that are wrong.</param>
/// <param name="Tables">The tables behind the values.</param>
/// <param name="Values">The values; of one table alone where the query names it.</param>
internal sealed record VerificationAnswer(
    string Engine,
    [property: JsonConverter(typeof(WordConverter<CheckVerdict>))] CheckVerdict Verdict,
    int Checked,
    IReadOnlyList<string> Failed,
    VerifiedTableAnswer[] Tables,
    VerifiedValueAnswer[] Values)
{
    /// <summary>The results.</summary>
    /// <param name="report">The engine held against the tables.</param>
    /// <param name="table">Id of the only table whose values are listed, or null for all.</param>
    public static VerificationAnswer From(VerificationReport report, string? table) => new(
        EngineVersion.Current,
        report.Verdict,
        report.Values.Count,
        report.Failed,
        [.. report.Tables.Select(VerifiedTableAnswer.From)],
        [
            .. report.Tables.Where(verified => table is null || verified.Table.Id == table)
                .SelectMany(verified => verified.Values.Select(result => VerifiedValueAnswer.From(verified.Table.Subject, result))),
        ]);
}

/// <summary>A table of check values, printed or computed.</summary>
/// <param name="Id">Id, with which those of its values begin.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Citation">What was printed, where, how it was read and what was computed.</param>
/// <param name="Checked">Number of its values.</param>
/// <param name="Passed">Number of those that are right.</param>
/// <param name="Sources">Keys of its sources in <c>/v1/references</c>.</param>
/// <param name="Statuses">Where its values are from: words as in a value's <c>status</c>.</param>
internal sealed record VerifiedTableAnswer(
    string Id, string Subject, string Citation, int Checked, int Passed, string[] Sources, string[] Statuses)
{
    /// <summary>One table.</summary>
    /// <param name="verified">The table and its results.</param>
    public static VerifiedTableAnswer From(VerifiedTable verified) => new(
        verified.Table.Id,
        verified.Table.Subject,
        verified.Table.Citation,
        verified.Values.Count,
        verified.Values.Count(result => result.Verdict == CheckVerdict.Pass),
        [.. verified.Table.Values.Select(value => value.Source).Distinct()],
        [.. verified.Table.Values.Select(value => Wire.Word(value.Status)).Distinct()]);
}

/// <summary>One value of a table, and what the engine makes of it.</summary>
/// <param name="Id">Table, row and name of the value.</param>
/// <param name="Subject">What the table is about.</param>
/// <param name="Quantity">What is calculated.</param>
/// <param name="Given">What it is calculated from, with the digits and units of the table.</param>
/// <param name="Expected">The value of the table, in <c>unit</c>.</param>
/// <param name="Got">The engine's own, to twelve digits; null where it is not a number.</param>
/// <param name="Difference">Engine less table, to three digits; 0 below a thousandth of the tolerance, null where it is not a
/// number.</param>
/// <param name="Tolerance">How far the engine may be off to either side.</param>
/// <param name="Unit">Unit of the table, whatever the caller's; empty where the value has none.</param>
/// <param name="Source">Key of the source in <c>/v1/references</c>.</param>
/// <param name="Status">Where the value is from; <c>computed</c>: computed by hand or by a second method, printed nowhere.</param>
/// <param name="Verdict">Whether it is right.</param>
internal sealed record VerifiedValueAnswer(
    string Id,
    string Subject,
    string Quantity,
    string Given,
    double? Expected,
    double? Got,
    double? Difference,
    double? Tolerance,
    string Unit,
    string Source,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status,
    [property: JsonConverter(typeof(WordConverter<CheckVerdict>))] CheckVerdict Verdict)
{
    private const double NoDifference = 1e-3; // of the tolerance: what is left is how a machine rounds

    /// <summary>One value.</summary>
    /// <param name="subject">What its table is about.</param>
    /// <param name="result">The value and its result.</param>
    public static VerifiedValueAnswer From(string subject, CheckedValue result)
    {
        var value = result.Value;
        return new(
            value.Id,
            subject,
            value.Quantity,
            value.Given,
            WireNumber.Significant(value.Expected, 15),
            WireNumber.Significant(result.Got, 12),
            Math.Abs(result.Difference) < NoDifference * value.Tolerance ? 0 : WireNumber.Significant(result.Difference, 3),
            WireNumber.Significant(value.Tolerance, 6),
            value.Unit,
            value.Source,
            value.Status,
            result.Verdict);
    }
}
