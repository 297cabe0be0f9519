using FormApi.Http.Problems;

namespace FormApi.Http.Requests;

/// <summary>A body that was read, or the problem with it, whatever it should be.</summary>
/// <param name="problem">The problem, or null with a body.</param>
internal abstract class BoundBody(ProblemResult? problem)
{
    /// <summary>The problem, or null.</summary>
    public ProblemResult? Problem { get; } = problem;
}
