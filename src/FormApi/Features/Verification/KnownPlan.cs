using FormApi.Features.Forms;
using FormApi.Http.Units;
using Forming;
using Forming.Plans;

namespace FormApi.Features.Verification;

/// <summary>A plan of which a value is known by hand, computed once through defaults and units, and the units themselves.</summary>
/// <param name="compute">Computes it.</param>
internal sealed class KnownPlan(Func<FormPlan> compute)
{
    // Leads and the arc of the mid surface: 80 + 150 + π/2 × (90 + 1.2/2).
    private const double BlankMm = 372.314147208;

    // What the units are by definition or by the tables of the National Institute of Standards, each way; the last digits printed are
    // rounded.
    private static readonly (Func<double> Got, double Known)[] Units =
    [
        (() => UnitSystem.Inch.ToMm(1), 25.4),
        (() => UnitSystem.Inch.ToN(1), 4.448222),
        (() => UnitSystem.Inch.ToMpa(1000), 6.894757),
        (() => UnitSystem.Inch.ToKgPerCubicMetre(0.1), 2767.990),
        (() => UnitSystem.Inch.ToPerMetre(0.3048), 1),
        (() => UnitSystem.Inch.ToPerKg(1), 2.204623),
        (() => UnitSystem.Inch.Length(25.4), 1),
        (() => UnitSystem.Inch.Curvature(1), 25.4),
        (() => UnitSystem.Inch.Area(645.16), 1),
        (() => UnitSystem.Inch.Force(4.448222), 1),
        (() => UnitSystem.Inch.Stress(6.894757), 1000),
        (() => UnitSystem.Inch.Density(2767.990), 0.1),
        (() => UnitSystem.Inch.Moment(4.448222), 1),
        (() => UnitSystem.Inch.Torque(112.9848), 1),
        (() => UnitSystem.Inch.Mass(1), 2.204623),
        (() => UnitSystem.Inch.Energy(1.355818), 1),
        (() => UnitSystem.Inch.Run(1), 3.280840),
        (() => UnitSystem.Inch.PerRun(3.280840), 1),
        (() => UnitSystem.Inch.PerMass(2.204623), 1),
        (() => UnitSystem.Degrees(new(1)), 57.29578),
        (() => UnitSystem.Mm.ToN(1), 1),
        (() => UnitSystem.Mm.Force(1), 1),
        (() => UnitSystem.Mm.Energy(1), 1),
        (() => UnitSystem.Mm.Stress(1), 1),
    ];

    private readonly Lazy<bool> _comesOut = new(() => IsAsKnown(compute));

    /// <summary>Whether it is right; a plan that throws is not.</summary>
    public bool ComesOut => _comesOut.Value;

    /// <summary>A quarter turn in stainless steel.</summary>
    public static FormPlan QuarterTurn()
    {
        var request = FormDefaults.Apply(new(
            LengthUnit.Mm,
            new(new("ss-304"), new ArcInput(90, 90), LeadIn: 80, LeadOut: 150, Width: 600, Thickness: 1.2),
            new(new("steel-cr-cs"), FoldRadius: 2, LeadIn: 60, LeadOut: 60, Thickness: 2),
            new(Length: 1250)));
        var specs = FormSpecs.From(request);
        return FormPlan.Compute(specs.Job, _ => false);
    }

    private static bool IsAsKnown(Func<FormPlan> compute)
    {
        try
        {
            var plan = compute();
            return plan.Verdict != PlanVerdict.CannotBeMade
                && plan.Form.Stations.Count > 1
                && Math.Abs(plan.Panel.Blank.LengthMm - BlankMm) < 1e-6
                && Units.All(unit => Math.Abs((unit.Got() / unit.Known) - 1) < 1e-6);
        }
        catch (Exception)
        {
            return false;
        }
    }
}
