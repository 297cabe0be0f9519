using Forming.Drawing.Parts;

namespace Forming.Drawing.Dxf;

/// <summary>A layer.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Colour">Colour index.</param>
/// <param name="LineType">Name of its line type.</param>
internal sealed record DxfLayer(string Name, int Colour, string LineType = "Continuous")
{
    /// <summary>The layer of a part's lines of one kind, so that a machine is given the edges to cut and nothing else.</summary>
    /// <param name="part">The part.</param>
    /// <param name="role">What the lines are for.</param>
    public static DxfLayer Of(FlatPart part, LineRole role) => role switch
    {
        LineRole.Outline => new($"{part.Kind}_CUT", 7),
        LineRole.Fold => new($"{part.Kind}_FOLD", 1),
        LineRole.Tangent => new($"{part.Kind}_TANGENT", 8),
        LineRole.Sight => new($"{part.Kind}_SIGHT", 5, "DASHED"),
        LineRole.Mark => new($"{part.Kind}_MARK", 3),
        LineRole.Stock => new($"{part.Kind}_STOCK", 9),
        _ => TextOf(part),
    };

    /// <summary>The layer of a part's words and numbers.</summary>
    /// <param name="part">The part.</param>
    public static DxfLayer TextOf(FlatPart part) => new($"{part.Kind}_TEXT", 2);
}
