using Forming.Results;

namespace Forming.Tolerances;

/// <summary>One figure of the form held against one class of a published table.</summary>
/// <param name="Standard">Name of the standard.</param>
/// <param name="Class">Its class, or null where it has none.</param>
/// <param name="Figure">What is compared: <c>fold-angle</c>, <c>closing-angle</c> or <c>end-position</c>.</param>
/// <param name="SizeMm">Size the table is read at [mm].</param>
/// <param name="Quantity">What kind of quantity the next two are.</param>
/// <param name="Expected">Largest expected deviation at the coverage in use [rad or mm].</param>
/// <param name="Allowed">Permissible deviation [rad or mm], or null where the table has none for this size.</param>
/// <param name="Source">Key of the source.</param>
/// <param name="Status">How the value was read.</param>
public sealed record ToleranceComparison(
    string Standard, string? Class, string Figure, double SizeMm, Quantity Quantity, double Expected, double? Allowed, string Source, Status Status)
{
    /// <summary>Whether the form holds it, or null where the table has no figure.</summary>
    public bool? Holds => Allowed is { } allowed ? Expected <= allowed : null;
}
