using Forming.Estimates;
using Forming.Facets;
using Forming.Jobs;
using Forming.Springback;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Estimates;

/// <summary>
/// Two whole jobs priced by hand. Blanks, masses, pulls and clamp loads are those of the table worked-jobs.csv, which a second method computed;
/// everything from there on is the arithmetic that is written out here, in minutes and money.
/// </summary>
public class EstimatesByHandTests
{
    // The table has ten digits.
    private const double Digits = 2e-8;

    // Form 257.49552 × 600 × 2 mm, 2.425607798 kg; panel 392.3141472 × 600 × 1.2 mm, 2.259729488 kg; 10 folds, two settings of the stop;
    // pull 552.7 N, so three people; clamp load 3034 N and 600 mm wide, so a clamp at each end.
    [Fact]
    public void A_quarter_turn_in_stainless_at_the_usual_rates()
    {
        const double FormEdge = 2 * (0.25749552 + 0.6);
        const double PanelEdge = 2 * (0.3923141472 + 0.6);
        // Ten marks, cut, three strips, set up and three stop changes, two handlings, ten folds, four checks, deburr.
        const double Form = (10 + (10 * 1.5)) + (5 + (2 * FormEdge)) + (3 * 6) + (20 + (3 * 3)) + (2 * 2) + (10 * 1) + (5 + (4 * 2)) + (5 + (2 * FormEdge));
        const double SetUp = 5 + 10;
        // Cut, six marks, three people lay up, put two clamps on and off and pull, trim two ends of 0.6 m, check, deburr.
        const double AnyWay = (4 + (1.5 * PanelEdge)) + (3 * 1.2) + (2 + PanelEdge);
        const double Panel = AnyWay + (1 + (6 * 0.5)) + (3 * (3 + 2 + 2)) + 3;
        // On a sheet of 2500 × 1250 mm nine by two forms and six by two panels are the best of the three stock sheets: 49.0625 kg at 2 over 18,
        // 30 kg at 5 over 12. One trial panel before the good ones.
        const double FormSheet = 2 * 49.0625 / 18;
        const double PanelSheet = 5 * 30.0 / 12;
        const double One = 1.15 * (Form + FormSheet + SetUp + (2 * (Panel + PanelSheet)));
        const double Ten = 1.15 * (Form + FormSheet + SetUp + (11 * (Panel + PanelSheet)));
        // 142.3 mm of curve: 90° in hits of 2° are 45, an eighth of an inch has room for 44.8; a quarter minute each, and 5 minutes to correct.
        const double Bumped = AnyWay + (45 * 0.25) + 5;
        const double TenBumped = 1.15 * (30 + (11 * (Bumped + PanelSheet)));

        var estimate = Estimate.Of(Job(Stainless) with { Pieces = [1, 10] });

        Near(115.8599642, Form, Digits);
        Near(Form, estimate.FormMinutes.Likely, Digits);
        Near(Panel, estimate.FirstPanelMinutes.Likely, Digits);
        var (single, batch) = (estimate.Prices[0], estimate.Prices[1]);
        Near(283.39966875, One, Digits);
        Near(One, single.Price.Likely, Digits);
        Near(853.28692591, Ten, Digits);
        Near(Ten, batch.Price.Likely, Digits);
        Near(Ten / 10, batch.EachPrice.Likely, Digits);
        Near(Form + SetUp + (11 * Panel), batch.Minutes.Likely, Digits);
        Near(0.15 / 1.15 * Ten, batch.Costs.Overhead.Likely, Digits);
        // Low and high: form 0.7 to 1.5, panel 0.8 to 1.3, sheet 0.9 to 1.2.
        Near(1.15 * ((0.7 * Form) + (0.8 * (SetUp + (11 * Panel))) + (0.9 * (FormSheet + (11 * PanelSheet)))), batch.Price.Low, Digits);
        Near(1.15 * ((1.5 * Form) + (1.3 * (SetUp + (11 * Panel))) + (1.2 * (FormSheet + (11 * PanelSheet)))), batch.Price.High, Digits);
        var bumping = estimate.Comparisons.Single();
        Assert.Equal(45, bumping.Hits!.Count);
        Near(582.39136981, TenBumped, Digits);
        Near(TenBumped, bumping.Rows[1].Cost.Likely, Digits);
        Near(TenBumped - Ten, bumping.Rows[1].Saving.Likely, Digits);
        // Bumping costs less at first and less for every panel.
        Assert.Equal(new BreakEven(BreakEvenOutcome.Never, null, null, true), bumping.Likely);
    }

    // Form 273.3501742 × 800 × 1.5 mm, 2.574958641 kg; panel 398.1268302 × 800 × 1.6 mm, 1.365734278 kg; 9 folds. 72 an hour, a tenth of
    // overhead; form sheet 2.5 a kilogram, a fifth of it scrap; panel sheets whole, 95 each, three by three blanks of them. Two trial panels,
    // every doubling takes 0.8 of the time: 1, 0.8, 0.702, 0.64 …: 1.8 for 2, 5.3459135 for 8, 8.9201369 for 16. Two people pull.
    [Fact]
    public void Aluminium_covers_at_a_shops_own_rates()
    {
        const double FormEdge = 2 * (0.2733501742 + 0.8);
        const double PanelEdge = 2 * (0.3981268302 + 0.8);
        const double Form = (10 + (9 * 1.5)) + (5 + (2 * FormEdge)) + (3 * 6) + (20 + (3 * 3)) + (2 * 2) + (9 * 1) + (5 + (3 * 2)) + (5 + (2 * FormEdge));
        const double AnyWay = (4 + (1.5 * PanelEdge)) + (3 * 1.6) + (2 + PanelEdge);
        // Three clamps for 800 mm.
        const double Panel = AnyWay + (1 + (6 * 0.5)) + (2 * (3 + 3 + 2)) + 3;
        const double FormSheet = 2.5 * 2.574958641 / 0.8;
        const double Once = (1.2 * (Form + 15)) + FormSheet;
        // Eight blanks are on one sheet, sixteen on two.
        const double Six = 1.1 * (Once + (1.2 * 5.3459135333 * Panel) + 95);
        const double Fourteen = 1.1 * (Once + (1.2 * 8.9201368519 * Panel) + 190);
        // The rolls are 1.5 a minute: 20 minutes to set up, 18 for the first panel, which gets faster like all else.
        const double SixRolled = 1.1 * ((1.5 * 20) + (5.3459135333 * ((1.2 * AnyWay) + (1.5 * 18))) + 95);
        // A subcontractor: 150 once, 70 each, and 5 minutes of our own labour.
        const double SixBought = 150 + (6 * (70 + (1.1 * 1.2 * 5)));

        var estimate = Estimate.Of(Job(Aluminium) with
        {
            Pieces = [14, 6],
            Counts = new(Trials: 2, People: 2),
            Learning = new(LearningModel.Unit, 0.8),
            Rates = new()
            {
                LabourPerHour = 72,
                Overhead = 0.1,
                MinimumCharge = 500,
                FormSheet = new(new PricePerKg(2.5), ScrapShare: 0.2),
                PanelSheet = new(new PricePerStockSheet(95, "2500 × 1250 mm"), SheetBuying.WholeSheets),
            },
            Rolling = new(20, 18, 90),
            Other = new("subcontractor", 150, 70, 5),
        });

        Near(Form, estimate.FormMinutes.Likely, Digits);
        Near(Panel, estimate.FirstPanelMinutes.Likely, Digits);
        Near(Fourteen, estimate.Prices[0].Price.Likely, Digits);
        Near(Six, estimate.Prices[1].Price.Likely, Digits);
        Near(1.2 * 1.8 * Panel, estimate.Prices[1].Costs.TrialLabour.Likely, Digits);
        Assert.Equal((16, 2), (estimate.Prices[0].Materials[1].Blanks, estimate.Prices[0].Materials[1].Sheets!.Value));
        Assert.Equal([OtherWay.Bumping, OtherWay.Rolling, OtherWay.Other], estimate.Comparisons.Select(comparison => comparison.Way));
        Near(SixRolled, estimate.Comparisons[1].Rows[1].Cost.Likely, Digits);
        Near(SixBought, estimate.Comparisons[2].Rows[1].Cost.Likely, Digits);
        Near(SixBought - Six, estimate.Comparisons[2].Rows[1].Saving.Likely, Digits);
        Assert.False(estimate.Prices[0].IsMinimum);
    }

    private static readonly (PanelSpec Panel, FormSpec Form, double ReachMm) Stainless = (
        new()
        {
            Springback = new PureBending(),
            Sheet = new(Hardening(193_000, 0.28, 290, 0.45, 1275) with { UltimateMpa = 580, DensityKgPerCubicMetre = 8000, MinRadiusOverThickness = 1 }, 1.2),
            Curve = Arc(90, 90),
            WidthMm = 600,
            LeadInMm = 80,
            LeadOutMm = 150,
            TrimMm = 10,
            LeverMm = 140,
            Clamp = new(0, 40, 25),
            Finish = Finish.Satin,
        },
        new()
        {
            Sheet = new(Hardening(207_000, 0.29, 200, 0.21, 600) with { UltimateMpa = 330, DensityKgPerCubicMetre = 7850, MinRadiusOverThickness = 0.5 }, 2),
            FoldRadiusMm = 3,
            NeutralFactor = 0.4,
            LeadInMm = 60,
            LeadOutMm = 60,
            WidthMm = 600,
            Stepping = new() { Folds = 10 },
        },
        12);

    private static readonly (PanelSpec Panel, FormSpec Form, double ReachMm) Aluminium = (
        new()
        {
            Springback = new PureBending(),
            Sheet = new(Hardening(70_300, 0.33, 193, 0.08, 300) with { UltimateMpa = 228, DensityKgPerCubicMetre = 2680, MinRadiusOverThickness = 1 }, 1.6),
            Curve = Arc(120, 75),
            WidthMm = 800,
            LeadInMm = 70,
            LeadOutMm = 160,
            TrimMm = 5,
            LeverMm = 70,
            Clamp = new(40, 40, 25),
            Finish = Finish.Satin,
        },
        new()
        {
            Sheet = new(Hardening(207_000, 0.29, 250, 0.15, 560) with { UltimateMpa = 370, DensityKgPerCubicMetre = 7850, MinRadiusOverThickness = 1 }, 1.5),
            FoldRadiusMm = 2.5,
            NeutralFactor = 0.38,
            LeadInMm = 50,
            LeadOutMm = 70,
            WidthMm = 800,
            Stepping = new() { Folds = 9 },
        },
        15);

    // Sheet at 2 a kilogram for the form and 5 for the panel, by the area used.
    private static EstimateJob Job((PanelSpec Panel, FormSpec Form, double ReachMm) given) => new()
    {
        Plan = Plan(given.Panel, given.Form, new() { LengthMm = 3000, ReachMm = given.ReachMm }),
        Panel = given.Panel,
        Form = given.Form,
        Rates = new() { FormSheet = new(new PricePerKg(2)), PanelSheet = new(new PricePerKg(5)) },
    };
}
