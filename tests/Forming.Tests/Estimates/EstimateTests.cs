using CsCheck;
using Forming.Curves;
using Forming.Estimates;
using Forming.Jobs;
using Forming.Plans;
using Forming.Results;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Estimates;

/// <summary>Whole estimates: sums, bounds, scale, and which figures are said to be assumed.</summary>
public class EstimateTests
{
    private static readonly EstimateJob Corner = JobOf(Panel(Arc(90, 90)));
    private static readonly EstimateJob Mirrored = JobOf(Panel(Arc(90, 90)) with { Mirrored = true });
    private static readonly EstimateJob Cone = JobOf(Panel(new TaperCurve(Arc(90, 60), Arc(140, 60), 300, TaperPlacement.Concentric, default)));
    private static readonly EstimateJob MirroredCone = JobOf(Cone.Panel with { Mirrored = true, LeadOutMm = 200 });

    private static readonly Gen<EstimateJob> Jobs =
        from job in Gen.Int[0, 3].Select(i => new[] { Corner, Mirrored, Cone, MirroredCone }[i])
        from pieces in Gen.Int[1, 2000]
        from rate in Gen.OneOf(Gen.Double[0.6, 0.99], Gen.Const(1.0))
        from model in Gen.Enum<LearningModel>()
        from labour in Gen.Double[0, 200]
        from sheet in Gen.Double[0, 50]
        from low in Gen.Double[0, 1]
        from high in Gen.Double[1, 3]
        from fold in Gen.Double[0, 10]
        select job with
        {
            Pieces = pieces,
            Learning = new(model, rate),
            Spreads = new() { Form = new(low, high), Panel = new(1 - (low / 2), high), Material = new(low, 1.1) },
            Rates = new()
            {
                LabourPerHour = labour,
                FormSheet = new PricePerKg(sheet),
                PanelSheet = new PricePerStockSheet(10 * sheet, "2500 × 1250 mm"),
                Form = new() { Folding = new(1, fold) },
            },
            Other = new("milled block", 20 * labour, sheet, fold),
        };

    [Fact]
    public void Elements_add_up_to_totals() => Jobs.ForAll(job =>
    {
        var estimate = Estimate.Of(job);
        AssertSame(Band.Sum(estimate.FormWork.Select(element => element.Minutes)), estimate.FormMinutes);
        AssertSame(Band.Sum(estimate.PanelWork.Select(element => element.Minutes)), estimate.FirstPanelMinutes);
        AssertSame(estimate.FormMinutes + estimate.PanelMinutes, estimate.TotalMinutes);
        var costs = estimate.Costs;
        AssertSame(job.Rates.LabourPerHour / 60 * estimate.TotalMinutes, costs.FormLabour + costs.PanelLabour);
        AssertSame(Band.Sum(estimate.Materials.Select(line => line.Cost)), costs.FormMaterial + costs.PanelMaterial);
        AssertSame(costs.Total, job.Pieces * estimate.AverageCost);
        var last = estimate.Milestones[^1];
        Assert.Equal(job.Pieces, last.Piece);
        Near(costs.Total.Likely, last.TotalCost, 1e-9);
        Near(estimate.TotalMinutes.Likely, last.TotalMinutes, 1e-9);
    }, iter: 300);

    [Fact]
    public void Bounds_hold_every_figure() => Jobs.ForAll(job =>
    {
        var estimate = Estimate.Of(job);
        IEnumerable<Band> bands =
        [
            .. estimate.FormWork.Concat(estimate.PanelWork).Select(element => element.Minutes),
            .. estimate.Materials.Select(line => line.Cost),
            estimate.TotalMinutes, estimate.Costs.Total, estimate.AverageCost, estimate.Comparison!.Saving,
        ];
        Assert.All(bands, band => Assert.True(band.Low <= band.Likely && band.Likely <= band.High, band.ToString()));
    }, iter: 300);

    [Fact]
    public void More_panels_are_never_dearer_a_piece() => Jobs.ForAll(job =>
    {
        var row = Estimate.Of(job).Milestones;
        for (var i = 1; i < row.Count; i++)
        {
            Assert.True(row[i].AverageCost <= row[i - 1].AverageCost * (1 + 1e-12));
            Assert.True(row[i].Minutes <= row[i - 1].Minutes * (1 + 1e-9));
            Assert.True(row[i].TotalCost >= row[i - 1].TotalCost);
        }
    }, iter: 300);

    [Fact]
    public void Another_currency_changes_nothing_but_the_figures() => Gen.Select(Jobs, Gen.Double[0.01, 200]).ForAll((job, exchange) =>
    {
        var other = job with
        {
            Rates = job.Rates with
            {
                LabourPerHour = exchange * job.Rates.LabourPerHour,
                FormSheet = new PricePerKg(exchange * ((PricePerKg)job.Rates.FormSheet!).Money),
                PanelSheet = new PricePerStockSheet(exchange * ((PricePerStockSheet)job.Rates.PanelSheet!).Money, "2500 × 1250 mm"),
            },
            Other = job.Other! with { FixedCost = exchange * job.Other.FixedCost, CostPerPiece = exchange * job.Other.CostPerPiece },
        };
        var (mine, theirs) = (Estimate.Of(job), Estimate.Of(other));
        AssertSame(exchange * mine.Costs.Total, theirs.Costs.Total);
        Assert.Equal(mine.TotalMinutes, theirs.TotalMinutes);
        Assert.Equal(mine.Comparison!.Likely, theirs.Comparison!.Likely);
    }, iter: 200);

    [Fact]
    public void Break_even_is_found_on_the_costs_that_are_shown()
    {
        var job = Corner with { Pieces = 40, Learning = new(LearningModel.Unit, 0.9), Other = new("rolled by a subcontractor", 60, 45) };
        var estimate = Estimate.Of(job);
        var from = estimate.Comparison!.Likely.From!.Value;
        Assert.InRange(from, 2, 2000);
        Assert.True(CostOf(from) < OtherOf(from));
        Assert.True(CostOf(from - 1) >= OtherOf(from - 1));
        Near(OtherOf(40), estimate.Comparison.OtherTotal, 1e-12);
        Near(OtherOf(40) - CostOf(40), estimate.Comparison.Saving.Likely, 1e-9);

        double CostOf(int pieces) => Estimate.Of(job with { Pieces = pieces }).Costs.Total.Likely;
        double OtherOf(int pieces) => 60 + (45.0 * pieces);
    }

    // A mirrored panel is pulled, clamped and checked twice; a taper has two marks a fold; two hands of it need two forms.
    [Fact]
    public void Mirrored_and_tapered_work_is_counted_for_what_it_is()
    {
        Assert.Equal(2, Quantity(Mirrored, "pulling"));
        Assert.Equal(1, Quantity(Corner, "pulling"));
        Assert.Equal(1, Estimate.Of(Mirrored).Quantities.Forms);
        var folds = Cone.Plan.Form.Stations.Count;
        var cone = Estimate.Of(Cone);
        Assert.Equal(2 * folds, cone.Quantities.Marks);
        Assert.Equal(1, cone.Quantities.Forms);
        var both = Estimate.Of(MirroredCone);
        Assert.Equal(2, both.Quantities.Forms);
        Assert.Equal(2 * folds, both.FormWork.Single(element => element.Id == "folding").Quantity);
        Near(2 * Cone.Plan.Form.Blank.MassKg, both.Materials[0].MassKg, 1e-9);
        Assert.Contains(both.Notes, note => note.Id == "opposite-hand");

        static double Quantity(EstimateJob job, string id) => Estimate.Of(job).PanelWork.Single(element => element.Id == id).Quantity;
    }

    // The end edges of a cone's panel are its rulings: both as long as the cone's side between the end planes, √(300² + 50²).
    [Fact]
    public void A_taper_is_trimmed_along_its_end_rulings()
    {
        var job = JobOf(Cone.Panel with { TrimMm = 10 });
        var side = Math.Sqrt((300.0 * 300) + (50 * 50)) / 1000;
        Near(2 * side, Estimate.Of(job).PanelWork.Single(element => element.Id == "trimming").Quantity, 1e-3);
    }

    // Blanks of 1.5 mm aluminium at 6 a kilogram, and of 2 mm steel at 2; by the sheet, a share of one.
    [Fact]
    public void Sheet_is_priced_by_mass_or_by_its_share_of_a_stock_sheet()
    {
        var estimate = Estimate.Of(Corner with { Pieces = 7 });
        Near(2 * Corner.Plan.Form.Blank.MassKg, estimate.Costs.FormMaterial.Likely, 1e-12);
        Near(7 * 6 * Corner.Plan.Panel.Blank.MassKg, estimate.Costs.PanelMaterial.Likely, 1e-12);
        var most = Corner.Plan.Panel.Blank.Stock.Where(stock => stock.Sheet.Name == "2000 × 1000 mm").Max(stock => stock.Pieces);
        Assert.InRange(most, 2, 40);
        var line = Estimate.Of(Corner with { Pieces = most + 1, Rates = new() { PanelSheet = new PricePerStockSheet(90, "2000 × 1000 mm") } }).Materials[1];
        Assert.Equal(2, line.Sheets);
        Assert.Equal(most, line.BlanksPerSheet);
        Near(90.0 / most, line.EachCost.Likely, 1e-12);
    }

    [Fact]
    public void A_sheet_that_is_not_there_or_too_small_is_refused()
    {
        var unknown = Assert.Throws<NoSolutionException>(() => Estimate.Of(Corner with { Rates = new() { FormSheet = new PricePerStockSheet(90, "none such") } }));
        Assert.Equal(("estimate.unknown-sheet", "rates.formSheet.sheet"), (unknown.Code, unknown.Subject));
        var small = JobOf(Corner.Panel with { StockSheets = [new("offcut", 100, 100)] });
        var refused = Assert.Throws<NoSolutionException>(() => Estimate.Of(small with { Rates = new() { PanelSheet = new PricePerStockSheet(90, "offcut") } }));
        Assert.Equal(("estimate.sheet-too-small", "rates.panelSheet.sheet"), (refused.Code, refused.Subject));
    }

    [Fact]
    public void Every_default_is_listed_and_nothing_that_was_given()
    {
        var ids = Estimate.Of(Corner).Assumptions.Select(assumption => assumption.Id).ToArray();
        Assert.Equal(ids.Distinct(), ids);
        foreach (var (id, rate) in new[] { ("folding.each", 1.0), ("testStrips.each", 6), ("setUp.fixed", 20) })
            Assert.Equal(rate, Estimate.Of(Corner).Assumptions.Single(assumption => assumption.Id == "rates.form." + id).Value);
        Assert.Superset(
            new HashSet<string> { "rates.labour", "rates.formSheet.perMass", "rates.panelSheet.perMass", "counts.handlings", "counts.stopChanges", "counts.strips", "counts.checks", "learning.rate", "spread.form.low", "batch.pieces" },
            ids.ToHashSet());
        var given = Estimate.Of(Corner with
        {
            Pieces = 2,
            Learning = new(LearningModel.Unit, 0.9),
            Counts = new(3, 4, 5, 6),
            Rates = new()
            {
                LabourPerHour = 71,
                FormSheet = new PricePerKg(1.9),
                PanelSheet = new PricePerKg(7),
                Form = new() { Layout = Own, Cutting = Own, TestStrips = Own, SetUp = Own, Handling = Own, Folding = Own, Checking = Own, Finishing = Own },
                Panel = new() { Cutting = Own, Marking = Own, Clamping = Own, Pulling = Own, Trimming = Own, Checking = Own, Finishing = Own },
            },
            Spreads = new() { Form = OwnSpread, Panel = OwnSpread, Material = OwnSpread },
        });
        Assert.Empty(given.Assumptions);
        Assert.DoesNotContain(given.Basis, basis => basis.Status == Status.Assumption);
        Assert.DoesNotContain(given.Notes, note => note.Id == "nominal-money");
    }

    [Fact]
    public void Counts_from_a_program_win()
    {
        var estimate = Estimate.Of(Corner with { Counts = new(Handlings: 5, StopChanges: 9, Strips: 0, Checks: 1) });
        Assert.Equal(10, estimate.FormWork.Single(element => element.Id == "handling").Minutes.Likely);
        Assert.Equal(20 + (9 * 3), estimate.FormWork.Single(element => element.Id == "set-up").Minutes.Likely);
        Assert.DoesNotContain(estimate.Assumptions, assumption => assumption.Id.StartsWith("counts.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stop_that_is_known_needs_no_strips()
    {
        var form = Form() with { Stop = new(Angle.Zero, 1.1) };
        var estimate = Estimate.Of(new() { Plan = Plan(Corner.Panel, form), Panel = Corner.Panel, Form = form });
        Assert.Equal(0, estimate.Quantities.Strips);
    }

    [Fact]
    public void A_form_that_cannot_be_made_is_estimated_and_says_so()
    {
        var brake = Brake with { LengthMm = 200 };
        var estimate = Estimate.Of(Corner with { Plan = Plan(Corner.Panel, brake: brake) });
        Assert.Equal(PlanVerdict.CannotBeMade, estimate.Verdict);
        Assert.Contains(estimate.Failed, check => check.Id == "brake-length");
        Assert.Contains("brake-length", FormattableString.Invariant(estimate.Notes.Single(note => note.Id == "cannot-be-made").Text), StringComparison.Ordinal);
        Assert.True(estimate.FormMinutes.Likely > 0);
    }

    private static ElementRate Own { get; } = new(1.25, 0.75);

    private static Spread OwnSpread { get; } = new(0.95, 1.05);

    private static EstimateJob JobOf(PanelSpec panel) => new() { Plan = Plan(panel), Panel = panel, Form = Form() };

    private static void AssertSame(Band expected, Band actual)
    {
        Near(expected.Low, actual.Low, 1e-9);
        Near(expected.Likely, actual.Likely, 1e-9);
        Near(expected.High, actual.High, 1e-9);
    }
}
