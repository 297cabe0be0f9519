namespace Forming.Tests;

/// <summary>A check's verdict against its figure, its limit and its bound.</summary>
internal static class CheckLimits
{
    /// <summary>What can warn with the figure still on the right side of its limit, and why.</summary>
    private static readonly Dictionary<string, string> WarnsWithin = new()
    {
        ["capacity"] = "a fifth of the rating is kept in hand",
        ["form-yield"] = "the estimate of the moment may be an eighth too small",
        ["front-run"] = "the trade asks for more flat than the tools need",
        ["back-run"] = "the trade asks for more flat than the tools need",
        ["clamp-land"] = "the trade asks for more flat than the tools need",
        ["wrap-order"] = "the simulated pull skipped a fold, or came down on the form first, with a lever that is not too long",
        ["wrap-solver"] = "the simulated pull was given up with a lever that is not too long",
    };

    /// <summary>What can fail with the figure still on the right side of its limit, and why.</summary>
    private static readonly Dictionary<string, string> FailsWithin = new()
    {
        ["closure"] = "a form can run into its own lead before it has turned all the way round",
    };

    /// <summary>What fails without a figure or a limit, and why.</summary>
    private static readonly Dictionary<string, string> FailsWithout = new()
    {
        ["order"] = "no order of the folds was found",
    };

    /// <summary>What is wrong with a verdict, or null where it is what figure, limit and bound say, or where the check has a reason of its own.</summary>
    /// <param name="id">Id of the check.</param>
    /// <param name="verdict"><c>pass</c>, <c>warn</c> or <c>fail</c>.</param>
    /// <param name="value">The figure, or null.</param>
    /// <param name="limit">The limit, or null.</param>
    /// <param name="bound"><c>least</c> or <c>most</c>.</param>
    /// <param name="equal">Figures that agree to this share of themselves are equal.</param>
    public static string? Contradiction(string id, string verdict, double? value, double? limit, string bound, double equal)
    {
        if (value is not { } figure || limit is not { } least)
            return verdict == "fail" && !FailsWithout.ContainsKey(id) ? $"{id} fails with nothing to compare" : null;
        var past = bound == "most" ? figure - least : least - figure;
        var reach = equal * Math.Max(Math.Abs(figure), Math.Abs(least));
        return verdict switch
        {
            "pass" => past <= reach ? null : $"{id} passes at {figure}, with a {bound} of {least}",
            "warn" when WarnsWithin.ContainsKey(id) => null,
            "fail" when FailsWithin.ContainsKey(id) => null,
            _ => past >= -reach ? null : $"{id} does not pass at {figure}, with a {bound} of {least}",
        };
    }
}
