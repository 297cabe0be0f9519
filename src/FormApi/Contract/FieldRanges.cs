using FluentValidation;
using FormApi.Features.Estimates;
using FormApi.Features.Forms;
using FormApi.Features.Inspections;
using FormApi.Features.Predictions;
using FormApi.Features.Programs;
using FormApi.Features.TestStrips;
using FormApi.Features.Tolerances;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Contract;

/// <summary>The ranges that the rules hold fields against, by type and field.</summary>
internal static class FieldRanges
{
    private static readonly ILookup<(Type Type, string Field), AllowedRange> Ranges = Rules()
        .SelectMany(rules => rules.Validator.CreateDescriptor().GetMembersWithValidators()
            .SelectMany(member => member.Select(rule => rule.Validator).OfType<IRangeRule>()
                .Select(rule => (Key: (rules.Type, member.Key), rule.Range))))
        .Distinct()
        .ToLookup(rule => rule.Key, rule => rule.Range);

    /// <summary>The ranges of a field; more than one where they depend on something else.</summary>
    /// <param name="type">The record.</param>
    /// <param name="field">Contract name of the field.</param>
    public static IReadOnlyList<AllowedRange> Of(Type type, string field) => [.. Ranges[(type, field)]];

    private static IEnumerable<(Type Type, IValidator Validator)> Rules()
    {
        var units = UnitSystem.Mm;
        yield return (typeof(PanelInput), new PanelInputRules(units));
        yield return (typeof(ClampInput), new ClampInputRules(units));
        yield return (typeof(PullByInput), new PullByInputRules(units));
        yield return (typeof(StockSheetInput), new StockSheetInputRules(units));
        yield return (typeof(SpringbackInput), new SpringbackInputRules(units));
        yield return (typeof(MaterialInput), new MaterialInputRules(units));
        yield return (typeof(FormInput), new FormInputRules(units));
        yield return (typeof(SteppingInput), new SteppingInputRules(units));
        yield return (typeof(StopInput), new StopInputRules(units));
        yield return (typeof(BrakeInput), new BrakeInputRules(units));
        yield return (typeof(CapacityInput), new CapacityInputRules(units));
        yield return (typeof(MarksInput), new MarksInputRules(units));
        yield return (typeof(PointsInput), new PointsInputRules(units));
        yield return (typeof(SegmentsInput), new SegmentsInputRules(units));
        yield return (typeof(TaperInput), new TaperInputRules(units));
        yield return (typeof(FlatInput), new FlatInputRules(units));
        yield return (typeof(PredictionRequest), new PredictionRequestRules(units));
        yield return (typeof(StandingStationInput), new StandingStationInputRules(units));
        yield return (typeof(ProgramRequest), new ProgramRequestRules(units));
        yield return (typeof(ProgramBrakeInput), new BrakeInputRules(units));
        yield return (typeof(ToolsInput), new ToolsInputRules(units));
        yield return (typeof(GaugeInput), new GaugeInputRules(units));
        yield return (typeof(ToolSizeInput), new ToolSizeInputRules(units));
        yield return (typeof(StopStripsRequest), new StopStripsRequestRules(units));
        yield return (typeof(StopStripInput), new StopStripInputRules(units));
        yield return (typeof(SpringbackStripsRequest), new SpringbackStripsRequestRules(units));
        yield return (typeof(SpringbackStripInput), new SpringbackStripInputRules(units));
        yield return (typeof(NeutralFactorStripsRequest), new NeutralFactorStripsRequestRules(units));
        yield return (typeof(NeutralFactorStripInput), new NeutralFactorStripInputRules(units));
        yield return (typeof(ReadingErrorInput), new ReadingErrorInputRules(units));
        yield return (typeof(PrintThroughStripsRequest), new PrintThroughStripsRequestRules(units));
        yield return (typeof(PrintThroughStripInput), new PrintThroughStripInputRules(units));
        yield return (typeof(ToleranceRequest), new ToleranceRequestRules(units));
        yield return (typeof(AccuracyInput), new AccuracyInputRules(units));
        yield return (typeof(ToleranceInput), new ToleranceInputRules(units));
        yield return (typeof(InspectionRequest), new InspectionRequestRules(units));
        yield return (typeof(MeasuredInput), new MeasuredInputRules(units));
        yield return (typeof(InspectionToleranceInput), new InspectionToleranceInputRules(units));
        yield return (typeof(CorrectionInput), new CorrectionInputRules(units));
        yield return (typeof(PanelBatchInput), new PanelBatchInputRules(units));
        yield return (typeof(RatesInput), new RatesInputRules(units));
        yield return (typeof(ElementRateInput), new ElementRateInputRules(units));
        yield return (typeof(SheetPriceInput), new SheetPriceInputRules(units));
        yield return (typeof(CountsInput), new CountsInputRules(units));
        yield return (typeof(LearningInput), new LearningInputRules(units));
        yield return (typeof(SpreadGroupInput), new SpreadGroupInputRules(units));
        yield return (typeof(OtherMethodInput), new OtherMethodInputRules(units));
        foreach (var inChain in new[] { false, true })
        {
            yield return (typeof(ArcInput), new ArcInputRules(units, inChain));
            yield return (typeof(ProgressiveInput), new ProgressiveInputRules(units, inChain));
            yield return (typeof(EllipseInput), new EllipseInputRules(units, inChain));
        }
    }
}
