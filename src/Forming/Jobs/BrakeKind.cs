namespace Forming.Jobs;

/// <summary>Kinds of brake.</summary>
public enum BrakeKind
{
    /// <summary>A leaf brake: a beam clamps, a leaf swings.</summary>
    Leaf,

    /// <summary>A press brake: a punch presses into a die.</summary>
    Press,
}
