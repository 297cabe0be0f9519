namespace Forming.Drawing.Shapes;

/// <summary>A straight line on a blank, from its near to its far edge.</summary>
/// <param name="Near">End at the near edge [mm].</param>
/// <param name="Far">End at the far edge [mm].</param>
internal readonly record struct Segment(Point Near, Point Far);
