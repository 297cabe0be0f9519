namespace FormApi.Http.Units;

/// <summary>What a number in a request measures, and so which unit it is in.</summary>
internal enum Measure
{
    /// <summary>A plain number.</summary>
    Number,

    /// <summary>A length: mm or in.</summary>
    Length,

    /// <summary>An angle [°].</summary>
    Angle,

    /// <summary>A force: N or lbf.</summary>
    Force,

    /// <summary>A stress: MPa or psi.</summary>
    Stress,

    /// <summary>A density: kg/m³ or lb/in³.</summary>
    Density,

    /// <summary>A share of a hundred [%].</summary>
    Percent,

    /// <summary>A count.</summary>
    Count,
}
