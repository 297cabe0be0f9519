using FormApi.Features.Forms;
using FormApi.Http;
using Forming.Plans;

namespace FormApi.Operations;

/// <summary>A plan of which a figure is known by hand, computed once through defaults and units.</summary>
/// <param name="compute">Computes it.</param>
internal sealed class KnownPlan(Func<FormPlan> compute)
{
    // Leads and the arc of the mid surface: 80 + 150 + π/2 × (90 + 1.2/2).
    private const double BlankMm = 372.314147208;

    private readonly Lazy<bool> _comesOut = new(() => IsAsKnown(compute));

    /// <summary>Whether it came out; a plan that throws did not.</summary>
    public bool ComesOut => _comesOut.Value;

    /// <summary>A quarter turn in stainless steel.</summary>
    public static FormPlan QuarterTurn()
    {
        var request = FormDefaults.Apply(new(
            LengthUnit.Mm,
            new(new("ss-304"), LeadIn: 80, LeadOut: 150, new ArcInput(90, 90), Width: 600, Thickness: 1.2),
            new(new("steel-cr-cs"), FoldRadius: 2, LeadIn: 60, LeadOut: 60, Thickness: 2),
            new(Length: 1250)));
        var specs = FormSpecs.From(request);
        return FormPlan.Compute(specs.Panel, specs.Form, specs.Brake, specs.Marks, CancellationToken.None);
    }

    private static bool IsAsKnown(Func<FormPlan> compute)
    {
        try
        {
            var plan = compute();
            return plan.Verdict != PlanVerdict.CannotBeMade
                && plan.Form.Stations.Count > 1
                && Math.Abs(plan.Panel.Blank.LengthMm - BlankMm) < 1e-6;
        }
        catch (Exception)
        {
            return false;
        }
    }
}
