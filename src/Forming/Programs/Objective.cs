namespace Forming.Programs;

/// <summary>What makes one order better than another, in this order: no tight step, less handling, less doubtful gauging, fewer stop changes, more clearance.</summary>
/// <param name="Tight">Steps that clear by less than is asked for.</param>
/// <param name="Cost">Handling cost.</param>
/// <param name="Doubtful">Steps gauged over folded part or by mark.</param>
/// <param name="StopChanges">Changes of the stop.</param>
/// <param name="ClearanceMm">Least clearance, at most what is plenty [mm].</param>
internal readonly record struct Objective(int Tight, int Cost, int Doubtful, int StopChanges, double ClearanceMm) : IComparable<Objective>
{
    public int CompareTo(Objective other) =>
        (Tight, Cost, Doubtful, StopChanges, -ClearanceMm).CompareTo((other.Tight, other.Cost, other.Doubtful, other.StopChanges, -other.ClearanceMm));
}
