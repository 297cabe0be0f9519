namespace Forming.Springback;

/// <summary>Pure bending of the panel's sheet.</summary>
public sealed record PureBending : SpringbackChoice;
