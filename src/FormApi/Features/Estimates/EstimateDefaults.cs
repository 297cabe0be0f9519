using FormApi.Features.Forms;
using FormApi.Http.Units;
using Forming.Estimates;

namespace FormApi.Features.Estimates;

/// <summary>Fills in what a request left out; counts that stay null follow from the plan.</summary>
internal static class EstimateDefaults
{
    private const string OtherName = "other method";

    /// <summary>The request with every default shown, still in the caller's units.</summary>
    /// <param name="request">A request that passed its rules.</param>
    public static EstimateRequest Apply(EstimateRequest request)
    {
        var form = FormDefaults.Apply(request.AsForm());
        var units = UnitSystem.Of(request.Units);
        var standard = EstimateSpreads.Default;
        return request with
        {
            Panel = form.Panel,
            Form = form.Form,
            Brake = form.Brake,
            Marks = form.Marks,
            Pieces = request.Pieces ?? [.. EstimateJob.OnePiece],
            Rates = Apply(request.Rates ?? new(), form, units),
            Counts = request.Counts ?? new(),
            Learning = new(request.Learning?.Model ?? LearningCurve.None.Model, request.Learning?.Rate ?? LearningCurve.None.Rate),
            Spread = new(
                Apply(request.Spread?.Form, standard.Form),
                Apply(request.Spread?.Panel, standard.Panel),
                Apply(request.Spread?.Material, standard.Material)),
            Bumping = Apply(request.Bumping ?? new(), FormSpecs.SheetFrom(form.Panel, units).ThicknessMm, request.Rates?.Labour, units),
            OtherMethod = request.OtherMethod is { } other
                ? other with { MinutesPerPiece = other.MinutesPerPiece ?? 0, Name = other.Name ?? OtherName }
                : null,
        };
    }

    private static SpreadGroupInput Apply(SpreadGroupInput? group, Spread standard) =>
        new(group?.Low ?? standard.Low, group?.High ?? standard.High);

    private static BumpingInput Apply(BumpingInput given, double thicknessMm, double? labour, UnitSystem units)
    {
        var (standard, isFree) = (new Bumping(), given is { Angle: null, Pitch: null });
        return new(
            isFree ? Bumping.StandardAngle.Degrees : given.Angle,
            isFree ? units.Length(Bumping.PitchFor(thicknessMm)) : given.Pitch,
            given.SetUp ?? standard.SetUpMinutes,
            given.Hit ?? standard.HitMinutes,
            given.Correcting ?? standard.CorrectingMinutes,
            given.Hour ?? labour ?? NominalPrices.LabourPerHour);
    }

    private static RatesInput Apply(RatesInput rates, FormRequest request, UnitSystem units) => new(
        rates.Labour ?? NominalPrices.LabourPerHour,
        rates.Overhead ?? EstimateRates.DefaultOverhead,
        rates.MinimumCharge ?? EstimateRates.StandardMinimum(rates.Labour ?? NominalPrices.LabourPerHour),
        Apply(rates.FormSheet, request.Form!.Material!, units),
        Apply(rates.PanelSheet, request.Panel.Material, units),
        Apply(rates.Form ?? new(), units),
        Apply(rates.Panel ?? new(), units));

    private static SheetPriceInput Apply(SheetPriceInput? price, MaterialInput material, UnitSystem units)
    {
        var shown = (price ?? new()) with { Buy = price?.Buy ?? SheetBuying.AreaUsed };
        return SheetPriceInput.IsGiven(price)
            ? shown
            : shown with { PerMass = units.PerMass(NominalPrices.SheetPerKg(MaterialInputs.ToMaterial(material, units).Family)) };
    }

    private static FormRatesInput Apply(FormRatesInput rates, UnitSystem units)
    {
        var standard = FormRates.Default;
        return new(
            ByCount(rates.Layout, standard.Layout),
            ByLength(rates.Cutting, standard.Cutting, units),
            ByCount(rates.TestStrips, standard.TestStrips),
            ByCount(rates.SetUp, standard.SetUp),
            ByCount(rates.Handling, standard.Handling),
            ByCount(rates.Folding, standard.Folding),
            ByCount(rates.Checking, standard.Checking),
            ByLength(rates.Finishing, standard.Finishing, units),
            ByCount(rates.Ribs, standard.Ribs));
    }

    private static PanelRatesInput Apply(PanelRatesInput rates, UnitSystem units)
    {
        var standard = PanelRates.Default;
        return new(
            ByCount(rates.SetUp, standard.SetUp),
            ByLength(rates.Cutting, standard.Cutting, units),
            ByCount(rates.Marking, standard.Marking),
            ByCount(rates.LayingUp, standard.LayingUp),
            ByCount(rates.Clamping, standard.Clamping),
            ByCount(rates.Rigging, standard.Rigging),
            ByCount(rates.Pulling, standard.Pulling),
            ByLength(rates.Trimming, standard.Trimming, units),
            ByCount(rates.Checking, standard.Checking),
            ByLength(rates.Finishing, standard.Finishing, units));
    }

    private static ElementRateInput ByCount(ElementRateInput? rate, ElementRate standard) =>
        new(rate?.Fixed ?? standard.FixedMinutes, rate?.Each ?? standard.EachMinutes);

    private static ElementRateInput ByLength(ElementRateInput? rate, ElementRate standard, UnitSystem units) =>
        new(rate?.Fixed ?? standard.FixedMinutes, rate?.Each ?? units.PerRun(standard.EachMinutes));
}
