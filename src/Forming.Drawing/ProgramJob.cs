using Forming.Checks;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Results;

namespace Forming.Drawing;

/// <summary>What every writer of a program takes: the program, what it was worked out for, and how to word it.</summary>
/// <param name="Program">The program; it has steps.</param>
/// <param name="Part">The part.</param>
/// <param name="Brake">The brake with its tools.</param>
/// <param name="Sheet">The part's sheet.</param>
/// <param name="Checks">Every check, passed or not.</param>
/// <param name="Verdict">Their verdict.</param>
/// <param name="Units">Unit of the lengths shown.</param>
/// <param name="Tape">The tape that lengths are laid out with.</param>
/// <param name="GaugeSystem">Id of the gauge table that the sheet was stated by, or null.</param>
/// <param name="Title">Title of the sheet.</param>
/// <param name="Fingerprint">Fingerprint of request and engine, as the answer gives it.</param>
/// <param name="Wording">Writes a message in the caller's units; its arguments are <see cref="Figure"/>s.</param>
/// <param name="Link">Address that opens this sheet again, for a QR code; null for none.</param>
/// <param name="Only">The one step that is shown; null for all.</param>
/// <param name="Given">What the caller says of the job, or null.</param>
public sealed record ProgramJob(
    BrakeProgram Program,
    ProgramPart Part,
    ProgramBrake Brake,
    Sheet Sheet,
    IReadOnlyList<Check> Checks,
    PlanVerdict Verdict,
    LengthUnit Units,
    Tape Tape,
    string? GaugeSystem,
    string Title,
    string Fingerprint,
    Func<FormattableString, string> Wording,
    string? Link = null,
    ProgramStep? Only = null,
    TitleBlock? Given = null)
{
    /// <summary>What is written on top.</summary>
    internal string Heading => Given?.Title is { } title ? $"{title}: {char.ToLowerInvariant(Title[0])}{Title[1..]}" : Title;

    /// <summary>The steps that are shown.</summary>
    internal IReadOnlyList<ProgramStep> Shown => Only is { } step ? [step] : Program.Steps;

    /// <summary>How lengths, angles and forces read.</summary>
    internal Readout Readout { get; } = new(Units, Tape);

    /// <summary>The press brake, or null where it is a leaf brake.</summary>
    internal PressBrake? Press => Brake as PressBrake;

    /// <summary>The steps that share a picture: those of a handling, and of them those with one setting of the stop.</summary>
    internal IReadOnlyList<IReadOnlyList<ProgramStep>> Pictured()
    {
        var pictured = new List<List<ProgramStep>>();
        foreach (var step in Program.Steps)
        {
            if (pictured.Count == 0 || step.Handling != Handling.Push || step.IsStopChanged)
                pictured.Add([]);
            pictured[^1].Add(step);
        }

        return pictured;
    }

    /// <summary>The pencil mark of a step's fold, of parallel folds, from the start edge [mm].</summary>
    /// <param name="step">The step.</param>
    internal double MarkMm(ProgramStep step) => Part.MarkMm(step.Fold - 1);

    /// <summary>The steps of each handling: one laying in, or drawing out and putting in again, and the pushes that follow it.</summary>
    internal IReadOnlyList<IReadOnlyList<ProgramStep>> Handlings()
    {
        var handlings = new List<List<ProgramStep>>();
        foreach (var step in Program.Steps)
        {
            if (handlings.Count == 0 || step.Handling != Handling.Push)
                handlings.Add([]);
            handlings[^1].Add(step);
        }

        return handlings;
    }
}
