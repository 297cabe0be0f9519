namespace Forming.Programs.Motion;

/// <summary>Work counted in stretches of the part held against edges of jaws: the same part takes the same work on any day and any machine.</summary>
/// <param name="cancellation">Ends the work early.</param>
internal sealed class Effort(CancellationToken cancellation)
{
    /// <summary>Work so far.</summary>
    public long Spent { get; private set; }

    /// <summary>Counts some more.</summary>
    /// <param name="work">How much.</param>
    public void Spend(long work)
    {
        Spent += work;
        cancellation.ThrowIfCancellationRequested();
    }
}
