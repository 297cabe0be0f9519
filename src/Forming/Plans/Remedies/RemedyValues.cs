using Forming.Jobs;

namespace Forming.Plans.Remedies;

/// <summary>One way to cure a check: changes of one kind, the smallest first.</summary>
/// <param name="Count">How many there are.</param>
/// <param name="Start">Index at which to begin.</param>
/// <param name="At">The changes by index.</param>
/// <param name="TextAt">What to do, in words, by index.</param>
internal sealed record RemedyCandidate(int Count, int Start, Func<int, IReadOnlyList<JobChange>> At, Func<int, FormattableString> TextAt)
{
    /// <summary>No change at all.</summary>
    public static RemedyCandidate Nothing { get; } = new(0, 0, _ => [], _ => $"");

    /// <summary>A single set of changes.</summary>
    /// <param name="text">What to do, in words.</param>
    /// <param name="changes">The changes.</param>
    public static RemedyCandidate One(FormattableString text, params JobChange[] changes) => new(1, 0, _ => changes, _ => text);

    /// <summary>A field through a row of values.</summary>
    /// <param name="values">The values.</param>
    /// <param name="changes">The changes by value.</param>
    /// <param name="text">What to do, in words, by value.</param>
    public static RemedyCandidate Through(
        RemedyValues values, Func<double, IReadOnlyList<JobChange>> changes, Func<double, FormattableString> text) =>
        new(values.Numbers.Count, values.Start, i => changes(values.Numbers[i]), i => text(values.Numbers[i]));
}

/// <summary>Values that a shop would set, from the one in use outwards, in the caller's unit.</summary>
/// <param name="Numbers">The values, the smallest change first.</param>
/// <param name="Start">Index at which to begin: the value that a formula asks for, rounded to the safe side.</param>
internal sealed record RemedyValues(IReadOnlyList<double> Numbers, int Start)
{
    /// <summary>No change is looked for in finer steps than this share.</summary>
    private const double Growth = 1.02;

    private const int Most = 400;

    /// <summary>Values above the one in use.</summary>
    /// <param name="now">The value in use.</param>
    /// <param name="guess">The value that is expected to do.</param>
    /// <param name="most">The largest.</param>
    /// <param name="step">Step to round to, by the value.</param>
    public static RemedyValues Up(double now, double guess, double most, Func<double, double> step) =>
        Of(
            now,
            Math.Min(guess, most),
            value => value <= most && value > now,
            value => Math.Max(value * Growth, value + step(value)),
            value => Ceiling(value, step));

    /// <summary>Values below the one in use.</summary>
    /// <param name="now">The value in use.</param>
    /// <param name="guess">The value that is expected to do.</param>
    /// <param name="least">The smallest.</param>
    /// <param name="step">Step to round to, by the value.</param>
    public static RemedyValues Down(double now, double guess, double least, Func<double, double> step) =>
        Of(
            now,
            Math.Max(guess, least),
            value => value >= least && value < now,
            value => Math.Min(value / Growth, value - step(value)),
            value => Floor(value, step));

    /// <summary>Whole numbers from one to another.</summary>
    /// <param name="first">The smallest change.</param>
    /// <param name="last">The largest.</param>
    /// <param name="guess">The number that is expected to do.</param>
    public static RemedyValues Whole(int first, int last, int guess)
    {
        var sign = last >= first ? 1 : -1;
        var count = Math.Clamp(((last - first) * sign) + 1, 0, 1000);
        return new(
            [.. Enumerable.Range(0, count).Select(i => (double)(first + (sign * i)))],
            Math.Clamp((guess - first) * sign, 0, Math.Max(0, count - 1)));
    }

    /// <summary>Steps for lengths that are read on a tape.</summary>
    /// <param name="units">The caller's units.</param>
    public static Func<double, double> Tape(CallerUnits units) => units.IsInch
        ? value => value < 1 ? 0.0625 : value < 10 ? 0.125 : value < 100 ? 0.25 : 1
        : value => value < 100 ? 0.5 : value < 1000 ? 1 : 5;

    /// <summary>Steps for lengths that are measured with a caliper or set on a machine.</summary>
    /// <param name="units">The caller's units.</param>
    public static Func<double, double> Fine(CallerUnits units) => units.IsInch
        ? value => value < 0.01 ? 0.0001 : value < 1 ? 0.001 : value < 10 ? 0.01 : value < 100 ? 0.1 : 1
        : value => value < 0.1 ? 0.001 : value < 1 ? 0.01 : value < 20 ? 0.1 : value < 100 ? 0.5 : value < 1000 ? 1 : 5;

    /// <summary>Steps for angles [°].</summary>
    /// <param name="degrees">The angle.</param>
    public static double Degrees(double degrees) => degrees < 0.05 ? 0.001 : degrees < 1 ? 0.05 : 0.1;

    /// <summary>Steps for forces and stresses.</summary>
    /// <param name="value">The force or stress.</param>
    public static double Load(double value) => value < 100 ? 1 : value < 1000 ? 10 : value < 10000 ? 50 : 500;

    private static RemedyValues Of(
        double now, double guess, Func<double, bool> isAllowed, Func<double, double> next, Func<double, double> round)
    {
        var numbers = new List<double>();
        var wanted = round(guess);
        var start = -1;
        for (var value = next(now); numbers.Count < Most; value = next(value))
        {
            var rounded = round(value);
            if (start < 0 && isAllowed(wanted) && Math.Abs(rounded - now) >= Math.Abs(wanted - now))
            {
                start = numbers.Count;
                numbers.Add(wanted);
                if (rounded == wanted)
                    continue;
            }

            if (!isAllowed(rounded))
                break;
            if (numbers.Count == 0 || rounded != numbers[^1])
                numbers.Add(rounded);
        }

        return new(numbers, Math.Max(0, start));
    }

    /// <summary>A value rounded up.</summary>
    /// <param name="value">The value.</param>
    /// <param name="step">Step to round to, by the value.</param>
    public static double Ceiling(double value, Func<double, double> step) =>
        Rounded(Math.Ceiling((value / step(value)) - 1e-9), step(value));

    private static double Floor(double value, Func<double, double> step) => Rounded(Math.Floor((value / step(value)) + 1e-9), step(value));

    // As a person would write it: no 0.30000000000000004.
    private static double Rounded(double steps, double step) => Math.Round(steps * step, 6);
}
