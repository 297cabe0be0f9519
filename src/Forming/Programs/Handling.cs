namespace Forming.Programs;

/// <summary>How the part comes to a fold.</summary>
public enum Handling
{
    /// <summary>The flat blank is laid in.</summary>
    Load,

    /// <summary>Pushed on in the opened brake.</summary>
    Push,

    /// <summary>Drawn out and put in again, the same edge in front.</summary>
    ReEnter,

    /// <summary>Drawn out, turned end for end, put in again.</summary>
    Turn,
}
