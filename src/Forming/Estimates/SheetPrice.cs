namespace Forming.Estimates;

/// <summary>What sheet costs.</summary>
public abstract record SheetPrice;
