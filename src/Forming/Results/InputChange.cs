namespace Forming.Results;

/// <summary>A change to what was asked.</summary>
/// <param name="Subject">Which input, as a path of contract field names such as <c>form.foldRadius</c>.</param>
/// <param name="Value">Its new value [mm or rad].</param>
/// <param name="Quantity">What kind of quantity it is.</param>
public sealed record InputChange(string Subject, double Value, Quantity Quantity);
