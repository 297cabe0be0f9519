namespace Forming.Programs.Brakes;

/// <summary>An edge of the part.</summary>
public enum PartEdge
{
    /// <summary>The edge of the lead-in, from which stations count.</summary>
    Start,

    /// <summary>The edge of the lead-out.</summary>
    End,
}
