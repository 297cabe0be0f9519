using Forming.Materials;

namespace Forming.Verification;

/// <summary>A printed table whose values the engine computes with its functions.</summary>
/// <param name="Id">Stable id: the name of its file.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Citation">What was printed, where, how it was read and what was computed: the head of its file.</param>
/// <param name="Values">The values, row by row.</param>
public sealed record CheckTable(string Id, string Subject, string Citation, IReadOnlyList<CheckValue> Values)
{
    private const string Folder = "Verification";

    /// <summary>The file behind a table.</summary>
    /// <param name="id">The table's id.</param>
    internal static CsvTable File(string id) => CsvTable.ReadEmbedded(id + ".csv", Folder);

    /// <summary>Reads a table and makes the checks of each row.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="subject">What it is about.</param>
    /// <param name="given">What the values of a row are calculated from; <c>{column}</c> stands for the printed text.</param>
    /// <param name="checks">The checks of a row.</param>
    internal static CheckTable Read(string id, string subject, string given, Func<PrintedRow, IEnumerable<CheckValue>> checks)
    {
        var file = File(id);
        return new(id, subject, file.Head, [.. file.Rows.SelectMany((row, i) => checks(new($"{id}.{i + 1}", file.Header, row, given)))]);
    }
}

/// <summary>Every table that the engine is held against.</summary>
public static class CheckTables
{
    /// <summary>The tables, subject by subject.</summary>
    public static IReadOnlyList<CheckTable> All { get; } =
    [
        .. CurveChecks.Tables(),
        .. ConeChecks.Tables(),
        .. FoldChecks.Tables(),
        .. SpringbackChecks.Tables(),
        .. FlowCurveChecks.Tables(),
        .. WrapChecks.Tables(),
        .. WorkedJobChecks.Tables(),
        .. RadiusChecks.Tables(),
        .. GaugeChecks.Tables(),
        .. ForceChecks.Tables(),
        .. ToleranceChecks.Tables(),
        .. StatisticsChecks.Tables(),
        .. LearningChecks.Tables(),
    ];
}
