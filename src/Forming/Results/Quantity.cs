namespace Forming.Results;

/// <summary>What kind of quantity a figure is; its unit inside is fixed by the kind.</summary>
public enum Quantity
{
    /// <summary>A plain number.</summary>
    Number,

    /// <summary>A length [mm].</summary>
    Length,

    /// <summary>An angle [rad].</summary>
    Angle,

    /// <summary>A force [N].</summary>
    Force,

    /// <summary>A stress [MPa].</summary>
    Stress,

    /// <summary>A bending moment per width [N·mm/mm].</summary>
    MomentPerWidth,

    /// <summary>A mass [kg].</summary>
    Mass,

    /// <summary>An energy [J].</summary>
    Energy,
}
