namespace Forming.Results;

/// <summary>What to ask instead of what has no answer.</summary>
/// <param name="Text">What to do, in words; its arguments are <see cref="Figure"/>s.</param>
/// <param name="Changes">Changes to what was asked, to be made together.</param>
public sealed record InputRemedy(FormattableString Text, IReadOnlyList<InputChange> Changes);

/// <summary>A change to what was asked.</summary>
/// <param name="Subject">Which input, as a path of contract field names such as <c>form.foldRadius</c>.</param>
/// <param name="Value">Its new value [mm or rad].</param>
/// <param name="Quantity">What kind of quantity it is.</param>
public sealed record InputChange(string Subject, double Value, Quantity Quantity);
