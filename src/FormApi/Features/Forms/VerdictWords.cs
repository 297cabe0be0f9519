using FormApi.Http.Json;
using Forming.Plans;

namespace FormApi.Features.Forms;

/// <summary>Verdicts as they are written.</summary>
internal static class VerdictWords
{
    private static readonly IReadOnlyList<string> All = Wire.Words<PlanVerdict>();

    /// <summary>The word of a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Of(PlanVerdict verdict) => All[(int)verdict];
}
