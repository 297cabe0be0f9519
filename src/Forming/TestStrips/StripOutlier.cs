namespace Forming.TestStrips;

/// <summary>A strip that does not go with the others; it is named, and still counted.</summary>
/// <param name="Index">Its place in the list, from 0.</param>
/// <param name="Reason">How far it is out and what leaving it out would do; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record StripOutlier(int Index, FormattableString Reason);
