namespace Forming.Tolerances;

/// <summary>What a general tolerance is for.</summary>
public enum TolerancedQuantity
{
    /// <summary>An angle, by the length of its shorter leg.</summary>
    Angle,

    /// <summary>A length, by the length itself.</summary>
    Length,
}
