using Forming.Plans;

namespace FormApi.Http.Results;

/// <summary>An answer that has a verdict.</summary>
internal interface IJudged
{
    /// <summary>The verdict of the checks.</summary>
    PlanVerdict Verdict { get; }
}
