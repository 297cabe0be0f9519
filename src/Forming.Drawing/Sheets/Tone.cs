namespace Forming.Drawing.Sheets;

/// <summary>The three tones of a sheet.</summary>
internal enum Tone
{
    /// <summary>Black.</summary>
    Ink,

    /// <summary>White, on black.</summary>
    Paper,

    /// <summary>Light grey, behind everything else.</summary>
    Ghost,
}
