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
