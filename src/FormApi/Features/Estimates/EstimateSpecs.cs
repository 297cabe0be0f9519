using FormApi.Features.Forms;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Estimates;
using Forming.Plans;

namespace FormApi.Features.Estimates;

/// <summary>From a request with its defaults filled in to what the library is asked, in its own units.</summary>
internal static class EstimateSpecs
{
    /// <summary>Plans the form of a request, and puts its rates beside it.</summary>
    /// <param name="request">The request with every default filled in.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static EstimateJob From(EstimateRequest request, CancellationToken cancellation)
    {
        var specs = FormSpecs.From(request.AsForm());
        return From(request, specs, FormPlan.Compute(specs.Job, check => check.Verdict == Verdict.Fail, cancellation));
    }

    /// <summary>Puts the rates of a request beside its plan.</summary>
    /// <param name="request">The request with every default filled in.</param>
    /// <param name="specs">What was planned.</param>
    /// <param name="plan">Its plan.</param>
    public static EstimateJob From(EstimateRequest request, FormSpecs specs, FormPlan plan)
    {
        var units = UnitSystem.Of(request.Units);
        var (counts, learning, spread) = (request.Counts!, request.Learning!, request.Spread!);
        return new()
        {
            Plan = plan,
            Panel = specs.Panel,
            Form = specs.Form,
            Assumed = specs.Job.Assumed,
            Pieces = request.Pieces!,
            Rates = RatesFrom(request.Rates!, units),
            HasOwnPrices = request.NeedsOwnPrices(),
            Counts = new(
                counts.Handlings,
                counts.StopChanges,
                counts.Strips,
                counts.Checks,
                counts.Ribs,
                counts.Trials,
                counts.People,
                counts.Clamps),
            Learning = new(learning.Model!.Value, learning.Rate!.Value),
            Spreads = new() { Form = SpreadFrom(spread.Form!), Panel = SpreadFrom(spread.Panel!), Material = SpreadFrom(spread.Material!) },
            Bumping = BumpingFrom(request.Bumping!, units),
            Rolling = request.Rolling is { } rolling ? new(rolling.SetUp, rolling.PerPanel, rolling.Hour) : null,
            Other = request.OtherMethod is { } other
                ? new(other.Name!, other.FixedCost, other.CostPerPiece, other.MinutesPerPiece!.Value)
                : null,
        };
    }

    private static EstimateRates RatesFrom(RatesInput rates, UnitSystem units) => new()
    {
        LabourPerHour = rates.Labour!.Value,
        Overhead = rates.Overhead!.Value,
        MinimumCharge = rates.MinimumCharge!.Value,
        FormSheet = PriceFrom(rates.FormSheet!, units),
        PanelSheet = PriceFrom(rates.PanelSheet!, units),
        Form = FormFrom(rates.Form!, units),
        Panel = PanelFrom(rates.Panel!, units),
    };

    private static SheetPurchase PriceFrom(SheetPriceInput price, UnitSystem units) => new(
        price.PerSheet is { } money ? new PricePerStockSheet(money, price.Sheet!) : new PricePerKg(units.ToPerKg(price.PerMass!.Value)),
        price.Buy!.Value,
        price.Sheet,
        price.ScrapShare);

    private static Bumping BumpingFrom(BumpingInput bumping, UnitSystem units) => new()
    {
        HitAngle = bumping.Angle is { } angle ? Angle.FromDegrees(angle) : null,
        PitchMm = bumping.Pitch is { } pitch ? units.ToMm(pitch) : null,
        SetUpMinutes = bumping.SetUp!.Value,
        HitMinutes = bumping.Hit!.Value,
        CorrectingMinutes = bumping.Correcting!.Value,
        HourMoney = bumping.Hour!.Value,
    };

    private static FormRates FormFrom(FormRatesInput rates, UnitSystem units) => new()
    {
        Layout = ByCount(rates.Layout),
        Cutting = ByLength(rates.Cutting, units),
        TestStrips = ByCount(rates.TestStrips),
        SetUp = ByCount(rates.SetUp),
        Handling = ByCount(rates.Handling),
        Folding = ByCount(rates.Folding),
        Checking = ByCount(rates.Checking),
        Finishing = ByLength(rates.Finishing, units),
        Ribs = ByCount(rates.Ribs),
    };

    private static PanelRates PanelFrom(PanelRatesInput rates, UnitSystem units) => new()
    {
        SetUp = ByCount(rates.SetUp),
        Cutting = ByLength(rates.Cutting, units),
        Marking = ByCount(rates.Marking),
        LayingUp = ByCount(rates.LayingUp),
        Clamping = ByCount(rates.Clamping),
        Rigging = ByCount(rates.Rigging),
        Pulling = ByCount(rates.Pulling),
        Trimming = ByLength(rates.Trimming, units),
        Checking = ByCount(rates.Checking),
        Finishing = ByLength(rates.Finishing, units),
    };

    private static ElementRate ByCount(ElementRateInput? rate) => new(rate!.Fixed!.Value, rate.Each!.Value);

    private static ElementRate ByLength(ElementRateInput? rate, UnitSystem units) =>
        new(rate!.Fixed!.Value, units.ToPerMetre(rate.Each!.Value));

    private static Spread SpreadFrom(SpreadGroupInput group) => new(group.Low!.Value, group.High!.Value);
}
