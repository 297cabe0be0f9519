namespace Forming.Prediction;

/// <summary>
/// How much work pulls may take, with all that they try again: counted, so that the same job ends the same way on any machine.
/// </summary>
/// <param name="most">The most [multiplications, about].</param>
/// <param name="whole">What it is a part of, or null.</param>
internal sealed class PullWork(long most, PullWork? whole = null)
{
    /// <summary>What one prediction may take, or a search over counts of folds: one to three seconds.</summary>
    public const long Most = 4_000_000_000;

    /// <summary>What solving a form on the simulated pull may take.</summary>
    public const long MostOfSolving = Most / 10;

    /// <summary>What all trials of remedies together may take.</summary>
    public const long MostOfTrials = 5 * MostOfSolving;

    private long _left = most;

    /// <summary>Whether something was asked for that was not left.</summary>
    public bool IsSpent { get; private set; }

    /// <summary>What one prediction or one search may take.</summary>
    /// <param name="whole">What it is a part of, or null.</param>
    public static PullWork PartOf(PullWork? whole) => new(Most, whole);

    /// <summary>Takes work; from the first that is not left on, nothing is.</summary>
    /// <param name="work">How much.</param>
    /// <returns>Whether it was left.</returns>
    public bool Take(long work)
    {
        IsSpent = IsSpent || work > _left || whole?.Take(work) == false;
        if (!IsSpent)
            _left -= work;
        return !IsSpent;
    }
}
