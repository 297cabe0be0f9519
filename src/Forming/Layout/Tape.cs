namespace Forming.Layout;

/// <summary>The tape that marks are read on.</summary>
/// <param name="Unit">What it is divided in.</param>
/// <param name="Resolution">Its smallest step in its own unit, &gt; 0: 0.015625 is 1/64 in.</param>
public sealed record Tape(TapeUnit Unit, double Resolution)
{
    /// <summary>Length of the tape's unit [mm].</summary>
    public double UnitMm => Unit == TapeUnit.Inch ? 25.4 : 1;

    /// <summary>Smallest step [mm].</summary>
    public double ResolutionMm => Resolution * UnitMm;
}
