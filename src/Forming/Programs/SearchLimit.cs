using System.Diagnostics;

namespace Forming.Programs;

/// <summary>How long a search may go on: counted work first, so that answers do not depend on the machine; the clock only as a last resort.</summary>
internal sealed class SearchLimit
{
    /// <summary>Work granted for a second of deadline: below what one slow core does in it, so that the clock is hardly ever reached.</summary>
    private const double WorkASecond = 10e6;

    private readonly Effort effort;
    private readonly double granted;
    private readonly long until;

    public SearchLimit(Effort effort, TimeSpan deadline)
    {
        this.effort = effort;
        granted = deadline.TotalSeconds * WorkASecond;
        until = Stopwatch.GetTimestamp() + (long)(deadline.TotalSeconds * Stopwatch.Frequency);
    }

    /// <summary>Whether a search that began with some work done must end.</summary>
    /// <param name="begun">Work done when it began.</param>
    /// <param name="share">Its share of the work granted.</param>
    public bool IsReached(long begun, double share) =>
        effort.Spent - begun >= share * granted || Stopwatch.GetTimestamp() >= until;
}
