namespace Forming.Drawing.Dxf;

/// <summary>A layer.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Colour">Colour index.</param>
/// <param name="LineType">Name of its line type.</param>
internal sealed record DxfLayer(string Name, int Colour, string LineType = "Continuous")
{
    /// <summary>Edges to cut.</summary>
    public static DxfLayer Outline { get; } = new("OUTLINE", 7);

    /// <summary>Fold centre lines.</summary>
    public static DxfLayer Fold { get; } = new("FOLD", 1);

    /// <summary>Bend tangent lines.</summary>
    public static DxfLayer Tangent { get; } = new("TANGENT", 8);

    /// <summary>Sight lines.</summary>
    public static DxfLayer Sight { get; } = new("SIGHT", 5, "DASHED");

    /// <summary>Registration marks of the panel.</summary>
    public static DxfLayer Mark { get; } = new("MARK", 3);

    /// <summary>Words and numbers.</summary>
    public static DxfLayer Text { get; } = new("TEXT", 2);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<DxfLayer> All { get; } = [Outline, Fold, Tangent, Sight, Mark, Text];
}
