namespace Forming.Tapers;

/// <summary>One fold on the flat: a strip as wide as its bend allowance, its sides the tangent lines.</summary>
/// <param name="FirstNear">Near end of the tangent line on the lead-in side [mm].</param>
/// <param name="FirstFar">Far end of it [mm].</param>
/// <param name="SecondNear">Near end of the tangent line on the lead-out side [mm].</param>
/// <param name="SecondFar">Far end of it [mm].</param>
internal readonly record struct FlatFold(Point FirstNear, Point FirstFar, Point SecondNear, Point SecondFar)
{
    /// <summary>Near end of the centre line [mm].</summary>
    public Point Near => 0.5 * (FirstNear + SecondNear);

    /// <summary>Far end of the centre line [mm].</summary>
    public Point Far => 0.5 * (FirstFar + SecondFar);

    /// <summary>The fold moved and turned.</summary>
    /// <param name="move">The motion.</param>
    public FlatFold Moved(Func<Point, Point> move) => new(move(FirstNear), move(FirstFar), move(SecondNear), move(SecondFar));
}
