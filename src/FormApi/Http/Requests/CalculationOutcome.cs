using FormApi.Http.Problems;
using FormApi.Http.Results;

namespace FormApi.Http.Requests;

/// <summary>How a calculation ended, in a word of a few.</summary>
internal static class CalculationOutcome
{
    /// <summary>A verdict, <c>answered</c> where the answer has none, or the code of a problem.</summary>
    /// <param name="result">What came out.</param>
    public static string Of(IResult result) => result.Innermost() switch
    {
        ProblemResult problem => problem.Code,
        AnswerResult { Verdict: { } verdict } => verdict,
        _ => "answered",
    };
}
