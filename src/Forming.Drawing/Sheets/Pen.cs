namespace Forming.Drawing.Sheets;

/// <summary>Kinds of line, distinct by weight and dash alone so that they work in black and white print.</summary>
internal enum Pen
{
    /// <summary>Edge of a part.</summary>
    Outline,

    /// <summary>Fold line.</summary>
    Fold,

    /// <summary>Bend tangent line.</summary>
    Tangent,

    /// <summary>Sight line.</summary>
    Sight,

    /// <summary>Edge of a thin sheet in section.</summary>
    Sheet,

    /// <summary>Edge of a part in another state.</summary>
    Phantom,

    /// <summary>Line of symmetry.</summary>
    Centre,

    /// <summary>Leader, rule, scale.</summary>
    Leader,

    /// <summary>Registration mark.</summary>
    Mark,
}

/// <summary>How a kind of line is drawn; none is thinner than ISO 128 allows, 0.13 mm.</summary>
/// <param name="WidthMm">Line width [mm].</param>
/// <param name="Dash">Lengths of dashes and gaps [mm]; empty for an unbroken line.</param>
internal readonly record struct PenStyle(double WidthMm, double[] Dash)
{
    /// <summary>No line is printed thinner [mm]: ISO 128-2.</summary>
    public const double LeastWidthMm = 0.13;

    private static readonly double[] Unbroken = [];

    private static readonly PenStyle[] Styles =
    [
        new(0.45, Unbroken),
        new(0.3, Unbroken),
        new(LeastWidthMm, Unbroken),
        new(0.15, [1.2, 0.8]),
        new(0.18, Unbroken),
        new(0.18, [2.2, 0.9]),
        new(0.15, [5, 1, 1, 1]),
        new(LeastWidthMm, Unbroken),
        new(0.3, [3, 1, 0.8, 1]),
    ];

    /// <summary>The style of a kind of line.</summary>
    /// <param name="pen">The kind.</param>
    public static PenStyle Of(Pen pen) => Styles[(int)pen];
}
