namespace Forming.Results;

/// <summary>How serious a danger is.</summary>
public enum SafetyLevel
{
    /// <summary>May hurt a little, or spoil the work.</summary>
    Caution,

    /// <summary>May hurt badly.</summary>
    Warning,

    /// <summary>Can maim or kill.</summary>
    Danger,
}

/// <summary>One caution that the request calls for.</summary>
/// <param name="Id">Stable id such as <c>sharp-edges</c>.</param>
/// <param name="Level">How serious.</param>
/// <param name="Text">The caution, in words; arguments are <see cref="Figure"/>s.</param>
public sealed record SafetyNote(string Id, SafetyLevel Level, FormattableString Text);

/// <summary>One hint that saves a panel.</summary>
/// <param name="Id">Stable id such as <c>burr-side</c>.</param>
/// <param name="Text">The hint, in words; arguments are <see cref="Figure"/>s.</param>
public sealed record ShopNote(string Id, FormattableString Text);
