namespace Forming.Drawing.Sheets;

/// <summary>Which point of a line of text its place names.</summary>
internal enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}
