namespace Forming.Verification;

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
