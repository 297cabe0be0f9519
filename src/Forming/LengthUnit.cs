namespace Forming;

/// <summary>The unit of every length in a request and its answer; all other units follow from it.</summary>
public enum LengthUnit
{
    /// <summary>Millimetres, and with them N, N·mm/mm, J, kg, MPa, kg/m³.</summary>
    Mm,

    /// <summary>Inches, and with them lbf, lbf·in/in, ft·lbf, lb, psi, lb/in³.</summary>
    In,
}
