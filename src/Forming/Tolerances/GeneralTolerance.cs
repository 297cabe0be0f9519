using Forming.Results;

namespace Forming.Tolerances;

/// <summary>One cell of a published table of general tolerances.</summary>
/// <param name="Standard">Name of the standard.</param>
/// <param name="Class">Its class, or empty where it has none.</param>
/// <param name="Quantity">What it is for.</param>
/// <param name="OverMm">Sizes above this [mm]; the smallest length of all is itself included.</param>
/// <param name="ToMm">Sizes up to and including this [mm], or null without end.</param>
/// <param name="Deviation">Permissible deviation to either side [rad or mm].</param>
/// <param name="Source">Key of the source.</param>
/// <param name="Status">How the value was read.</param>
public sealed record GeneralTolerance(
    string Standard, string Class, TolerancedQuantity Quantity, double OverMm, double? ToMm, double Deviation, string Source, Status Status);
