using Forming.Checks;
using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;

namespace Forming.Tests.Plans;

/// <summary>What is offered where a set-up cannot be, applied to the job, passes.</summary>
public class SetupRemedyTests
{
    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90)) with { LeverMm = 100 };

    private static readonly FormSpec Form = Workshop.Form() with { Backing = FormBacking.Ribs };

    private static readonly PanelSpec Mirrored = Arc with { LeadOutMm = 100, Mirrored = true };

    /// <summary>A check, a job that does not pass it, and the field that is to change.</summary>
    public static TheoryData<string, JobField> Cases => new()
    {
        { "pull-line", JobField.PanelLever },
        { "panel-clamp", JobField.PanelLeadIn },
        { "panel-clamp-near", JobField.ClampGap },
        { "form-width", JobField.FormWidth },
        { "marks-apart", JobField.MarksResolution },
        { "strength-coefficient", JobField.PanelStrengthCoefficient },
        { "strength-coefficient-form", JobField.FormStrengthCoefficient },
        { "form-yield", JobField.FormBacking },
        { "second-half-pull", JobField.PullByPeople },
        { "second-half-clearance", JobField.FormLeadOut },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_is_offered_passes(string fault, JobField changed)
    {
        var job = JobWith(fault);
        var id = fault.Replace("-near", "", StringComparison.Ordinal).Replace("coefficient-form", "coefficient", StringComparison.Ordinal);
        var check = Check(job, id);
        Assert.NotEqual(Verdict.Pass, check.Verdict);
        Assert.Equal(changed, check.Remedy!.Changes[0].Field);
        Assert.Equal(Verdict.Pass, Check(job.With(check.Remedy.Changes), id).Verdict);
    }

    private static FormJob JobWith(string fault) => fault switch
    {
        "pull-line" => Job(Arc with { LeverMm = 160 }),
        "panel-clamp" => Job(Arc with { LeadInMm = 0 }),
        "panel-clamp-near" => Job(Arc with { LeadInMm = 40, Clamp = new(25, 40, 25) }),
        "form-width" => Job(Arc, Form with { WidthMm = 250 }),
        "marks-apart" => new(Arc, Form, Workshop.Brake, new(Datum.Edge, new Tape(LengthUnit.Mm, 50))),
        "strength-coefficient" => Job(Arc with { Sheet = new(Weak(145), 1.5) }),
        "strength-coefficient-form" => Job(Arc, Form with { Sheet = new(Weak(250), 2) }),
        "form-yield" => Job(Arc with { LeverMm = 60 }, Form with { Sheet = Form.Sheet with { ThicknessMm = 0.8 }, Backing = FormBacking.None }),
        "second-half-pull" => Job(Mirrored with { LeadOutMm = 3000, LeadInMm = 4000 }),
        _ => Job(Mirrored, Form with { LeadOutMm = 160 }),
    };

    // K at the yield itself.
    private static Forming.Materials.Material Weak(double yield) => Workshop.Hardening(70000, 0.33, yield, 0.1, yield) with { UltimateMpa = 1.5 * yield };

    private static FormJob Job(PanelSpec panel, FormSpec? form = null) => new(panel, form ?? Form, Workshop.Brake, Workshop.Marks);

    private static Check Check(FormJob job, string id) =>
        FormPlan.Compute(job, needsRemedy: check => check.Id == id).Checks.Single(check => check.Id == id);
}
