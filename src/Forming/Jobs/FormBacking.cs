namespace Forming.Jobs;

/// <summary>What stands under the form.</summary>
public enum FormBacking
{
    /// <summary>Nothing: the bent sheet carries the pull by itself.</summary>
    None,

    /// <summary>Ribs cut to the inside profile, which keep the form from bending.</summary>
    Ribs,
}
