namespace Forming.Prediction;

/// <summary>A place on the mid surface of the panel after it was let go; the clamp is at the origin, heading +x.</summary>
/// <param name="AlongMm">Distance from the clamp along the panel [mm].</param>
/// <param name="Position">Where it lies [mm].</param>
/// <param name="Heading">Direction of the panel there.</param>
/// <param name="Curvature">Curvature of the mid surface [1/mm].</param>
public readonly record struct ReleasedPoint(double AlongMm, Point Position, Angle Heading, double Curvature);
