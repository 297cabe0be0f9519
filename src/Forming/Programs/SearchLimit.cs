using Forming.Programs.Motion;

namespace Forming.Programs;

/// <summary>How much work a search may do. Work is counted and no clock is read, so the answer is the same on any machine under any load.</summary>
/// <param name="effort">Work counted.</param>
/// <param name="most">Work granted to a search.</param>
internal sealed class SearchLimit(Effort effort, long most)
{
    /// <summary>Whether a search that began with some work done must end.</summary>
    /// <param name="begun">Work done when it began.</param>
    /// <param name="share">Its share of the work granted.</param>
    public bool IsReached(long begun, double share) => effort.Spent - begun >= share * most;
}
