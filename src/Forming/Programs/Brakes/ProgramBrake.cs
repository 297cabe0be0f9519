using Forming.Jobs;

namespace Forming.Programs.Brakes;

/// <summary>A brake with its tools. Every default is a generic assumption; nothing was measured on a brake.</summary>
public abstract record ProgramBrake
{
    /// <summary>Longest fold [mm].</summary>
    public required double LengthMm { get; init; }

    /// <summary>Clearance that is enough [mm].</summary>
    public double ClearanceMm { get; init; } = 1;

    /// <summary>Clearance past which more is not better [mm].</summary>
    public double PlentyMm { get; init; } = 10;

    /// <summary>Least lift of the upper jaw with which the part can be moved [mm].</summary>
    public double LeastLiftMm { get; init; } = 8;

    /// <summary>How far past its stop a fold may go.</summary>
    public Angle OverTravel { get; init; } = Angle.FromDegrees(0.5);

    /// <summary>Whether the part can be slid off the end of the brake.</summary>
    public bool IsOpenEnded { get; init; }

    /// <summary>Nearest place of the gauge [mm].</summary>
    public abstract double GaugeMinMm { get; init; }

    /// <summary>Farthest place of the gauge [mm].</summary>
    public double GaugeMaxMm { get; init; } = 600;

    /// <summary>How high the face of the gauge's stop reaches over the flat sheet [mm].</summary>
    public double StopHeightMm { get; init; } = 25;

    /// <summary>How far the upper jaw lifts [mm].</summary>
    public abstract double OpeningMm { get; init; }

    /// <summary>The sheet the brake is rated for over its full length, or null.</summary>
    public BrakeCapacity? Capacity { get; init; }

    internal abstract BrakeTools ToolsFor(ProgramPart part);
}
