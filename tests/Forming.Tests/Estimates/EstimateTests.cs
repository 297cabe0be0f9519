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
        from more in Gen.Int[0, 500]
        from trials in Gen.Int[0, 3]
        from overhead in Gen.Double[0, 0.5]
        from buying in Gen.Enum<SheetBuying>()
        from rate in Gen.OneOf(Gen.Double[0.6, 0.99], Gen.Const(1.0))
        from model in Gen.Enum<LearningModel>()
        from labour in Gen.Double[0, 200]
        from sheet in Gen.Double[0, 50]
        from low in Gen.Double[0, 1]
        from high in Gen.Double[1, 3]
        from fold in Gen.Double[0, 10]
        select job with
        {
            Pieces = [1, pieces, pieces + more],
            Counts = new(Trials: trials),
            Learning = new(model, rate),
            Spreads = new() { Form = new(low, high), Panel = new(1 - (low / 2), high), Material = new(low, 1.1) },
            Rates = new()
            {
                LabourPerHour = labour,
                Overhead = overhead,
                FormSheet = new(new PricePerKg(sheet)),
                PanelSheet = new(new PricePerStockSheet(10 * sheet, "2500 × 1250 mm"), buying),
                Form = new() { Folding = new(1, fold) },
            },
            Rolling = new(20, fold, labour),
            Other = new("milled block", 20 * labour, sheet, fold),
        };

    [Fact]
    public void Elements_add_up_to_totals() => Jobs.ForAll(job =>
    {
        var estimate = Estimate.Of(job);
        AssertSame(Band.Sum(estimate.FormWork.Select(element => element.Minutes)), estimate.FormMinutes);
        AssertSame(Band.Sum(estimate.PanelWork.Select(element => element.Minutes)), estimate.FirstPanelMinutes);
        Assert.Equal(job.Pieces, estimate.Prices.Select(row => row.Pieces));
        foreach (var row in estimate.Prices)
        {
            var costs = row.Costs;
            AssertSame(job.Rates.LabourPerHour / 60 * row.Minutes, costs.FormLabour + costs.SetUpLabour + costs.TrialLabour + costs.PanelLabour);
            AssertSame(Band.Sum(row.Materials.Select(line => line.Cost)), costs.FormMaterial + costs.PanelMaterial);
            AssertSame(job.Rates.Overhead / (1 + job.Rates.Overhead) * costs.Total, costs.Overhead);
            AssertSame(row.Price, row.Pieces * row.EachPrice);
        }
    }, iter: 150);

    [Fact]
    public void Bounds_hold_every_figure() => Jobs.ForAll(job =>
    {
        var estimate = Estimate.Of(job);
        IEnumerable<Band> bands =
        [
            .. estimate.FormWork.Concat(estimate.PanelWork).Select(element => element.Minutes),
            .. estimate.Prices.SelectMany(row => row.Materials).Select(line => line.Cost),
            .. estimate.Prices.SelectMany(row => new[] { row.Minutes, row.Costs.Total, row.Price, row.EachPrice, row.LastPanelMinutes }),
            .. estimate.Comparisons.SelectMany(comparison => comparison.Rows).Select(row => row.Cost),
        ];
        Assert.All(bands, band => Assert.True(band.Low <= band.Likely && band.Likely <= band.High, band.ToString()));
        foreach (var row in estimate.Comparisons.SelectMany(comparison => comparison.Rows))
        {
            var digits = 1e-12 * (row.Cost.High + estimate.Prices.Max(price => price.Price.High));
            Assert.True(row.Saving.Low <= row.Saving.Likely + digits && row.Saving.Likely <= row.Saving.High + digits, row.ToString());
        }
    }, iter: 150);

    // By whole sheets the last sheet that is begun may cost a piece more.
    [Fact]
    public void More_panels_are_never_dearer_a_piece() => Jobs.ForAll(job =>
    {
        var rows = Estimate.Of(job).Prices;
        for (var i = 1; i < rows.Count; i++)
        {
            if (job.PanelSheet.Buying == SheetBuying.AreaUsed)
                Assert.True(rows[i].EachPrice.Likely <= rows[i - 1].EachPrice.Likely * (1 + 1e-12));
            Assert.True(rows[i].LastPanelMinutes.Likely <= rows[i - 1].LastPanelMinutes.Likely * (1 + 1e-9));
            Assert.True(rows[i].Price.Likely >= rows[i - 1].Price.Likely);
        }
    }, iter: 150);

    [Fact]
    [Trait("Category", "Long")]
    public void Another_currency_changes_nothing_but_the_figures() => Gen.Select(Jobs, Gen.Double[0.01, 200]).ForAll((job, exchange) =>
    {
        var other = job with
        {
            Rates = job.Rates with
            {
                LabourPerHour = exchange * job.Rates.LabourPerHour,
                FormSheet = new(new PricePerKg(exchange * ((PricePerKg)job.Rates.FormSheet!.Price).Money)),
                PanelSheet = job.Rates.PanelSheet! with { Price = new PricePerStockSheet(exchange * ((PricePerStockSheet)job.Rates.PanelSheet.Price).Money, "2500 × 1250 mm") },
            },
            Bumping = job.Bumped with { HourMoney = exchange * job.Rates.LabourPerHour },
            Rolling = job.Rolling! with { HourMoney = exchange * job.Rolling.HourMoney },
            Other = job.Other! with { FixedCost = exchange * job.Other.FixedCost, CostPerPiece = exchange * job.Other.CostPerPiece },
        };
        foreach (var (mine, theirs) in Estimate.Of(job).Prices.Zip(Estimate.Of(other).Prices))
        {
            AssertSame(exchange * mine.Price, theirs.Price);
            Assert.Equal(mine.Minutes, theirs.Minutes);
        }

        foreach (var (mine, theirs) in Estimate.Of(job).Comparisons.Zip(Estimate.Of(other).Comparisons))
        {
            Assert.Equal(mine.Likely, theirs.Likely);
            foreach (var (one, another) in mine.Rows.Zip(theirs.Rows))
                AssertSame(exchange * one.Cost, another.Cost);
        }
    }, iter: 100);

    [Fact]
    public void Break_even_is_found_on_the_costs_that_are_shown()
    {
        var job = Corner with
        {
            Learning = new(LearningModel.Unit, 0.9),
            Rolling = new(25, 14, 80),
            Other = new("rolled by a subcontractor", 60, 65),
            Bumping = new() { HitMinutes = 0.4 },
        };
        foreach (var way in Enum.GetValues<OtherWay>())
        {
            var from = Of(1, way).Likely.From!.Value;
            Assert.InRange(from, 2, 2000);
            Assert.True(Saving(from, way) > 0);
            Assert.True(Saving(from - 1, way) <= 0);
        }

        Near(60 + (40 * 65.0), Of(40, OtherWay.Other).Rows[0].Cost.Likely, 1e-12);

        double Saving(int pieces, OtherWay way) => Of(pieces, way).Rows[0].Saving.Likely;
        Comparison Of(int pieces, OtherWay way) => Estimate.Of(job with { Pieces = [pieces] }).Comparisons.Single(comparison => comparison.Way == way);
    }

    // An hour of labour at 60 where the work is less: pieces of a quick form with everything at hand.
    [Fact]
    public void A_small_job_costs_the_minimum_charge()
    {
        var quick = Corner with { Counts = new(Strips: 0, Trials: 0), Rates = new() { LabourPerHour = 60, MinimumCharge = 1000 } };
        var row = Estimate.Of(quick).Prices.Single();
        Assert.True(row.IsMinimum);
        Assert.Equal(1000, row.Price.Likely);
        Assert.True(row.Costs.Total.Likely < 1000);
        Assert.Contains(Estimate.Of(quick).Notes, note => note.Id == "minimum-charge");
        Assert.False(Estimate.Of(quick with { Rates = new() }).Prices.Single().IsMinimum);
    }

    [Fact]
    public void Trial_panels_cost_their_labour_and_their_sheet()
    {
        PriceRow Row(int trials) => Estimate.Of(Corner with { Pieces = [5], Counts = new(Trials: trials) }).Prices.Single();
        var (none, two) = (Row(0), Row(2));
        Assert.Equal((5, 7), (none.Materials[1].Blanks, two.Materials[1].Blanks));
        Near(7.0 / 5 * none.Costs.PanelMaterial.Likely, two.Costs.PanelMaterial.Likely, 1e-12);
        Near(2.0 / 5 * none.Costs.PanelLabour.Likely, two.Costs.TrialLabour.Likely, 1e-12);
        Near(none.Costs.PanelLabour.Likely, two.Costs.PanelLabour.Likely, 1e-12);
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
        Assert.Equal(25, both.SetUp.Minutes.Likely);
        Assert.Equal(2 * folds, both.FormWork.Single(element => element.Id == "folding").Quantity);
        Near(2 * Cone.Plan.Form.Blank.MassKg, both.Prices[0].Materials[0].MassKg, 1e-9);
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

    [Fact]
    public void A_sheet_that_is_not_there_or_too_small_is_refused()
    {
        var unknown = Assert.Throws<NoSolutionException>(() => Estimate.Of(Corner with { Rates = new() { FormSheet = new(new PricePerStockSheet(90, "none such")) } }));
        Assert.Equal(("estimate.unknown-sheet", "rates.formSheet.sheet"), (unknown.Code, unknown.Subject));
        var small = JobOf(Corner.Panel with { StockSheets = [new("offcut", 100, 100)] });
        var refused = Assert.Throws<NoSolutionException>(() => Estimate.Of(small with { Rates = new() { PanelSheet = new(new PricePerStockSheet(90, "offcut")) } }));
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
            new HashSet<string> { "rates.labour", "rates.formSheet.perMass", "rates.panelSheet.perMass", "counts.handlings", "counts.stopChanges", "counts.strips", "counts.checks", "counts.ribs", "counts.trials", "counts.people", "counts.clamps", "rates.overhead", "rates.minimumCharge", "rates.panel.setUp.fixed", "rates.panelSheet.scrapShare", "bumping.angle", "bumping.pitch", "bumping.setUp", "bumping.hit", "bumping.correcting", "bumping.hour", "learning.rate", "spread.form.low", "pieces" },
            ids.ToHashSet());
        var given = Estimate.Of(Corner with
        {
            Pieces = [2],
            Learning = new(LearningModel.Unit, 0.9),
            Counts = new(3, 4, 5, 6, 0, 2, 1, 3),
            Rates = new()
            {
                LabourPerHour = 71,
                Overhead = 0.2,
                MinimumCharge = 50,
                FormSheet = new(new PricePerKg(1.9), ScrapShare: 0.1),
                PanelSheet = new(new PricePerKg(7), SheetBuying.WholeSheets),
                Form = new() { Layout = Own, Cutting = Own, TestStrips = Own, SetUp = Own, Handling = Own, Folding = Own, Checking = Own, Finishing = Own, Ribs = Own },
                Panel = new() { SetUp = Own, Cutting = Own, Marking = Own, LayingUp = Own, Clamping = Own, Rigging = Own, Pulling = Own, Trimming = Own, Checking = Own, Finishing = Own },
            },
            Bumping = new() { PitchMm = null, SetUpMinutes = 10, HitMinutes = 0.3, CorrectingMinutes = 3, HourMoney = 95 },
            Spreads = new() { Form = OwnSpread, Panel = OwnSpread, Material = OwnSpread },
        });
        Assert.Empty(given.Assumptions);
        Assert.DoesNotContain(given.Basis, basis => basis.Status == Status.Assumption);
        Assert.DoesNotContain(given.Notes, note => note.Id == "nominal-money");
    }

    [Fact]
    public void Counts_from_a_program_win()
    {
        var estimate = Estimate.Of(Corner with { Counts = new(Handlings: 5, StopChanges: 9, Strips: 0, Checks: 1, Ribs: 2, Trials: 0, People: 1, Clamps: 2) });
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
