using System.ComponentModel.DataAnnotations;

namespace FormApi.Hosting.Settings;

/// <summary>How the service stops; settings under <c>Drain</c>.</summary>
internal sealed class DrainSettings
{
    /// <summary>Name of the section in the settings.</summary>
    public const string Section = "Drain";

    /// <summary>How long it listens on once it is asked to stop [s]; readiness is red at once.</summary>
    [Range(0.0, 600.0)]
    public double Seconds { get; set; }

    /// <summary>How long requests under way may take to end after that [s].</summary>
    [Range(0.1, 600.0)]
    public double EndSeconds { get; set; } = 15;
}
