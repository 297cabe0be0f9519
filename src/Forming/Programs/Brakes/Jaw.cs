namespace Forming.Programs.Brakes;

/// <summary>What a part can strike in a brake.</summary>
public enum JawKind
{
    /// <summary>The beam of a leaf brake, which clamps from above.</summary>
    Beam,

    /// <summary>The bed: what the sheet of a leaf brake lies on, or what the die of a press brake is set on.</summary>
    Bed,

    /// <summary>The leaf, which swings.</summary>
    Leaf,

    /// <summary>The punch of a press brake.</summary>
    Punch,

    /// <summary>What holds the punch.</summary>
    Holder,

    /// <summary>The ram above the holder.</summary>
    Ram,

    /// <summary>The die.</summary>
    Die,

    /// <summary>The part, which can meet itself.</summary>
    Part,
}

/// <summary>What jaws are called.</summary>
public static class JawWords
{
    /// <summary>The word for it, in answers, files and on sheets.</summary>
    /// <param name="kind">The jaw.</param>
    public static string Word(this JawKind kind) => kind switch
    {
        JawKind.Beam => "beam",
        JawKind.Bed => "bed",
        JawKind.Leaf => "leaf",
        JawKind.Punch => "punch",
        JawKind.Holder => "holder",
        JawKind.Ram => "ram",
        JawKind.Die => "die",
        _ => "part itself",
    };
}

/// <summary>A jaw in section.</summary>
/// <param name="Kind">Which it is.</param>
/// <param name="Outline">[n] corners [mm].</param>
internal sealed record Jaw(JawKind Kind, Point[] Outline)
{
    public Box Bounds { get; } = Box.Of(Outline);

    /// <summary>The jaw moved.</summary>
    /// <param name="by">How far [mm].</param>
    public Jaw Moved(Point by) => new(Kind, [.. Outline.Select(corner => corner + by)]);
}
