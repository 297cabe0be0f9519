namespace Forming.Programs;

/// <summary>Work counted in stretches of the part held against a jaw: the same part takes the same work on any day and any machine.</summary>
/// <param name="cancellation">Ends the work early.</param>
internal sealed class Effort(CancellationToken cancellation)
{
    /// <summary>Stretches so far.</summary>
    public long Spent { get; private set; }

    /// <summary>Counts some more.</summary>
    /// <param name="stretches">How many.</param>
    public void Spend(int stretches)
    {
        Spent += stretches;
        cancellation.ThrowIfCancellationRequested();
    }
}
