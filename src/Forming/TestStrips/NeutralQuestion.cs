namespace Forming.TestStrips;

/// <summary>What is asked of strips measured flat and folded.</summary>
public sealed record NeutralQuestion
{
    /// <summary>Thickness of the form's sheet [mm], &gt; 0.</summary>
    public required double ThicknessMm { get; init; }

    /// <summary>The strips, at least one.</summary>
    public required IReadOnlyList<NeutralStrip> Strips { get; init; }

    /// <summary>To where the legs are measured.</summary>
    public FlangeEnd MeasuredTo { get; init; } = FlangeEnd.MoldLine;

    /// <summary>95 % of measured lengths lie within this of the true one [mm], &gt; 0.</summary>
    public double LengthErrorMm { get; init; } = 0.1;

    /// <summary>95 % of measured fold angles lie within this of the true one, at least 0.</summary>
    public Angle AngleError { get; init; } = Angle.FromDegrees(0.5);

    /// <summary>95 % of measured inside radii lie within this of the true one [mm], at least 0.</summary>
    public double RadiusErrorMm { get; init; } = 0.1;
}
