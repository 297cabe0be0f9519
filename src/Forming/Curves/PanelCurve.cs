namespace Forming.Curves;

/// <summary>A finished curve: starts at (0, 0) heading +x and turns left.</summary>
public abstract record PanelCurve;
