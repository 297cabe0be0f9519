using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace FormApi.Http;

/// <summary>How calculations ended, whether a call, a line of a batch or a link asked for them.</summary>
internal static class Calculations
{
    /// <summary>Name of the service's own meter and of its source of spans.</summary>
    public const string Meter = "FormApi";

    private static readonly Counter<long> Ended = new Meter(Meter).CreateCounter<long>(
        "formapi.calculations", "{calculation}", "Calculations by what was asked for and how they ended: a verdict, answered, or the code of a problem.");

    /// <summary>Spans of calculations.</summary>
    public static ActivitySource Spans { get; } = new(Meter);

    /// <summary>Counts one that ended.</summary>
    /// <param name="kind">What was asked for.</param>
    /// <param name="outcome">A verdict, <c>answered</c>, or the code of a problem.</param>
    public static void Count(string kind, string outcome) =>
        Ended.Add(1, new("formapi.calculation", kind), new KeyValuePair<string, object?>("formapi.outcome", outcome));
}
