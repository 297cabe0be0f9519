namespace Forming.Springback;

/// <summary>A measured springback factor.</summary>
/// <param name="Factor">Finished curvature over formed curvature, above 0 and at most 1.</param>
public sealed record MeasuredFactor(double Factor) : SpringbackChoice;
