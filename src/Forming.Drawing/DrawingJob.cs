using Forming.Checks;
using Forming.Jobs;
using Forming.Plans;
using Forming.Results;

namespace Forming.Drawing;

/// <summary>What every writer takes: a plan, what it was asked with, and how to word it.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Job">What was asked.</param>
/// <param name="Units">Unit of the lengths shown.</param>
/// <param name="Title">Title of the sheet, in the caller's words or what it is.</param>
/// <param name="Fingerprint">Fingerprint of request and engine, as the answer gives it.</param>
/// <param name="Wording">Writes a message in the caller's units; its arguments are <see cref="Figure"/>s.</param>
/// <param name="Link">Address that opens this sheet again, for a QR code; null for none.</param>
/// <param name="Given">What the caller says of the job, or null.</param>
public sealed record DrawingJob(
    FormPlan Plan,
    FormJob Job,
    LengthUnit Units,
    string Title,
    string Fingerprint,
    Func<FormattableString, string> Wording,
    string? Link = null,
    TitleBlock? Given = null)
{
    /// <summary>The panel that was asked for.</summary>
    internal PanelSpec Panel => Job.Panel;

    /// <summary>The form that was asked for.</summary>
    internal FormSpec Form => Job.Form;

    /// <summary>How the flat is marked.</summary>
    internal MarkSpec Marks => Job.Marks;

    /// <summary>Whether a check failed: nothing may be cut or folded from this plan.</summary>
    internal bool CannotBeMade => Plan.Verdict == PlanVerdict.CannotBeMade;

    /// <summary>The title and all else that the caller says of the job, in a line.</summary>
    internal string About => Title + TitleBlock.After(Given);

    /// <summary>How lengths, angles and masses read on this drawing.</summary>
    internal Readout Readout { get; } = new(Units, Job.Marks.Tape);

    /// <summary>Refuses a plan with a failed check, so that a machine never receives one.</summary>
    /// <exception cref="NoSolutionException"><c>drawing.cannot-be-made</c>: a check failed.</exception>
    internal void RefuseUnlessItCanBeMade()
    {
        if (!CannotBeMade)
            return;
        var failed = string.Join(", ", Plan.Checks.Where(check => check.Verdict == Verdict.Fail).Select(check => check.Id));
        throw new NoSolutionException(
            "drawing.cannot-be-made",
            "",
            $"a form with a failed check cannot be sent to a machine; failed: {failed}",
            $"the SVG and PDF sheets, which are marked, or a request that passes");
    }
}
