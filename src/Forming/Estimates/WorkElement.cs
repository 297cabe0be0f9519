namespace Forming.Estimates;

/// <summary>One element of work with its time.</summary>
/// <param name="Id">Stable id such as <c>folding</c>.</param>
/// <param name="Text">What is done, in words.</param>
/// <param name="Quantity">How many, or how long [m]; of all forms together.</param>
/// <param name="Unit">What is counted or measured.</param>
/// <param name="Minutes">Minutes of one person.</param>
public sealed record WorkElement(string Id, string Text, double Quantity, WorkUnit Unit, Band Minutes);
