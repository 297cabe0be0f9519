using System.Linq.Expressions;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;

namespace FormApi.Features.Estimates;

/// <summary>
/// A job whose time and cost are wanted: the request for its plan, and the shop's own rates. What a shop leaves out is an assumption, which
/// the answer lists.
/// </summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> or <c>in</c>. Rates by length are for a metre or a
/// foot, rates by mass for a kilogram or a pound; times are in minutes of one person.</param>
/// <param name="Panel">The finished panel that is wanted, and how it will be pulled.</param>
/// <param name="Form">The faceted form to be folded. Default: as <c>/v1/forms</c> chooses it.</param>
/// <param name="Brake">The brake the form is folded on. Default: a leaf brake as long as the form's longest fold.</param>
/// <param name="Marks">How the flat form blank is marked. Default: from the lead-in edge, on a tape in the request's units.</param>
/// <param name="Pieces">Counts of panels to price, each 1 to 100 000; the answer has a row for each. Default: one panel.</param>
/// <param name="Rates">What work takes and what labour and sheet cost. Default: assumptions.</param>
/// <param name="Counts">Counts that are known better, such as from a brake program. Default: from the plan, and assumptions.</param>
/// <param name="Learning">How panels get faster over the batch. Default: they do not.</param>
/// <param name="Spread">How far the values may be out. Default: assumptions.</param>
/// <param name="Bumping">Bumping the panel itself, which every answer compares. Default: the usual rules.</param>
/// <param name="Rolling">Rolling the panel. Default: null, no comparison.</param>
/// <param name="OtherMethod">Another way to make the same panels. Default: null, no comparison.</param>
/// <param name="Currency">Label of the caller's currency, three capital letters; nothing is converted. With it, with
/// <c>rolling</c> and with <c>otherMethod</c>, labour and both sheets need prices of the caller's own. Default: null.</param>
internal sealed record EstimateRequest(
    LengthUnit Units,
    PanelInput Panel,
    FormInput? Form = null,
    BrakeInput? Brake = null,
    MarksInput? Marks = null,
    int[]? Pieces = null,
    RatesInput? Rates = null,
    CountsInput? Counts = null,
    LearningInput? Learning = null,
    SpreadInput? Spread = null,
    BumpingInput? Bumping = null,
    RollingInput? Rolling = null,
    OtherMethodInput? OtherMethod = null,
    string? Currency = null) : IRequestBody<EstimateRequest>
{
    private static readonly EstimateRequestRules InMm = new(UnitSystem.Mm);
    private static readonly EstimateRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<EstimateRequest> IRequestBody<EstimateRequest>.TypeInfo => EstimateRequestJson.Strict.EstimateRequest;

    /// <inheritdoc/>
    bool IRequestBody<EstimateRequest>.HasNullItems => FormRequest.HasNull(Panel);

    /// <inheritdoc/>
    string? IRequestBody<EstimateRequest>.MissingField => FormRequest.MissingOf(Panel);

    /// <inheritdoc/>
    ValidationResult IRequestBody<EstimateRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <summary>Whether nominal prices would be mixed with real money: then labour and sheet need the caller's own.</summary>
    public bool NeedsOwnPrices() => Currency is not null || OtherMethod is not null || Rolling is not null;

    /// <summary>The request as one for a form.</summary>
    public FormRequest AsForm() => new(Units, Panel, Form, Brake, Marks);
}

/// <summary>Counts of one form, and of one panel.</summary>
/// <param name="Handlings">Times the blank is put into the brake, as a program's steps show: loaded, turned, drawn out and put in again.
/// Default: null, folded from both edges to the middle, which is 2, or 1 for a single fold.</param>
/// <param name="StopChanges">Changes of the stop after its first setting, as a program's answer gives them. Default: null, those of the
/// plan's stop settings in that order.</param>
/// <param name="Strips">Test strips folded first. Default: null, 3, or none where <c>form.stop</c> is given.</param>
/// <param name="Checks">Checks by template. Default: null, one for every three folds begun.</param>
/// <param name="Ribs">Ribs cut for the form. Default: null, those of the plan, none for a bare form.</param>
/// <param name="Trials">Panels bent before the first good one, in every price. Default: null, 1.</param>
/// <param name="People">People who lay up, clamp and pull. Default: null, as many as pull, width and mass need.</param>
/// <param name="Clamps">Clamps of each pull. Default: null, one for every 5000 N of the clamp load, and no further apart than 600
/// mm.</param>
internal sealed record CountsInput(
    int? Handlings = null,
    int? StopChanges = null,
    int? Strips = null,
    int? Checks = null,
    int? Ribs = null,
    int? Trials = null,
    int? People = null,
    int? Clamps = null);

/// <summary>How panels get faster: every doubling of the count takes the same share of the time before. Sheet and form do not.</summary>
/// <param name="Model"><c>unit</c>: the time of the n-th panel falls so (Crawford); <c>cumulative-average</c>: the mean of the first n does
/// (Wright). Default: <c>unit</c>.</param>
/// <param name="Rate">Time after a doubling over the time before: 0.8 is an 80 % curve. Default: 1, no learning.</param>
internal sealed record LearningInput(Forming.Estimates.LearningModel? Model = null, double? Rate = null);

/// <summary>How far the values may be out, by group; all groups move together.</summary>
/// <param name="Form">Time to build the form. Default: 0.7 to 1.5.</param>
/// <param name="Panel">Time of a panel. Default: 0.8 to 1.3.</param>
/// <param name="Material">Price of sheet. Default: 0.9 to 1.2.</param>
internal sealed record SpreadInput(SpreadGroupInput? Form = null, SpreadGroupInput? Panel = null, SpreadGroupInput? Material = null);

/// <summary>Bounds of a group of values, over the likely ones.</summary>
/// <param name="Low">Low bound over the likely value. Default: the group's.</param>
/// <param name="High">High bound over the likely value. Default: the group's.</param>
internal sealed record SpreadGroupInput(double? Low = null, double? High = null);

/// <summary>What a request for an estimate must satisfy.</summary>
internal sealed class EstimateRequestRules : AbstractValidator<EstimateRequest>
{
    private const int CurrencyLetters = 3;

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public EstimateRequestRules(UnitSystem units)
    {
        RuleFor(request => request.Panel).SetValidator(new PanelInputRules(units));
        RuleFor(request => request.Form!).SetValidator(new FormInputRules(units)).When(request => request.Form is not null);
        RuleFor(request => request.Brake!).SetValidator(new BrakeInputRules(units)).When(request => request.Brake is not null);
        RuleFor(request => request.Marks!).SetValidator(new MarksInputRules(units)).When(request => request.Marks is not null);
        RuleFor(request => request.Pieces!.Length).Within(Ranges.PieceCounts, units).About(request => request.Pieces)
            .When(request => request.Pieces is not null);
        RuleFor(request => request).Custom((request, context) =>
        {
            for (var i = 0; i < Math.Min(request.Pieces?.Length ?? 0, (int)Ranges.PieceCounts.Max); i++)
            {
                if (request.Pieces![i] < Ranges.Pieces.Min || request.Pieces[i] > Ranges.Pieces.Max)
                    context.FaultAt(one => one.Pieces, "out-of-range", "The value is outside its range.", Ranges.Pieces.Text(units), $"[{i}]");
            }
        });
        RuleFor(request => request.Rates!).SetValidator(new RatesInputRules(units)).When(request => request.Rates is not null);
        RuleFor(request => request.Counts!).SetValidator(new CountsInputRules(units)).When(request => request.Counts is not null);
        RuleFor(request => request.Learning!).SetValidator(new LearningInputRules(units)).When(request => request.Learning is not null);
        RuleFor(request => request.Spread!).SetValidator(new SpreadInputRules(units)).When(request => request.Spread is not null);
        RuleFor(request => request.Bumping!).SetValidator(new BumpingInputRules(units)).When(request => request.Bumping is not null);
        RuleFor(request => request.Rolling!).SetValidator(new RollingInputRules(units)).When(request => request.Rolling is not null);
        RuleFor(request => request.OtherMethod!).SetValidator(new OtherMethodInputRules(units))
            .When(request => request.OtherMethod is not null);
        RuleFor(request => request.Currency).Must(label => label!.Length == CurrencyLetters && label.All(char.IsAsciiLetterUpper))
            .Else("unknown-value", "A currency is three capital letters.", "such as EUR, GBP, USD")
            .When(request => request.Currency is not null);
        When(request => request.NeedsOwnPrices(), () =>
        {
            Need(request => request.Rates!.Labour, rates => rates?.Labour is not null, "a price of an hour");
            Need(request => request.Rates!.FormSheet, rates => SheetPriceInput.IsGiven(rates?.FormSheet), "perMass, or perSheet with sheet");
            Need(request => request.Rates!.PanelSheet, rates => SheetPriceInput.IsGiven(rates?.PanelSheet), "perMass, or perSheet with sheet");
        });
    }

    private void Need<TField>(Expression<Func<EstimateRequest, TField>> field, Func<RatesInput?, bool> isGiven, string allowed) =>
        RuleFor(request => request.Rates).Must(isGiven)
            .Else("missing-property", "Give this price: with a currency, rolling or another method the default does not apply, because it has no currency.", allowed)
            .About(field);
}

/// <summary>What counts must satisfy.</summary>
internal sealed class CountsInputRules : AbstractValidator<CountsInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public CountsInputRules(UnitSystem units)
    {
        RuleFor(counts => counts.Handlings).Within(Ranges.Handlings, units);
        RuleFor(counts => counts.StopChanges).Within(Ranges.WorkCount, units);
        RuleFor(counts => counts.Strips).Within(Ranges.WorkCount, units);
        RuleFor(counts => counts.Checks).Within(Ranges.WorkCount, units);
        RuleFor(counts => counts.Ribs).Within(Ranges.WorkCount, units);
        RuleFor(counts => counts.Trials).Within(Ranges.WorkCount, units);
        RuleFor(counts => counts.People).Within(Ranges.Crew, units);
        RuleFor(counts => counts.Clamps).Within(Ranges.Clamps, units);
    }
}

/// <summary>What a learning curve must satisfy.</summary>
internal sealed class LearningInputRules : AbstractValidator<LearningInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public LearningInputRules(UnitSystem units) => RuleFor(learning => learning.Rate).Within(Ranges.LearningRate, units);
}

/// <summary>What spreads must satisfy.</summary>
internal sealed class SpreadInputRules : AbstractValidator<SpreadInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SpreadInputRules(UnitSystem units)
    {
        var group = new SpreadGroupInputRules(units);
        RuleFor(spread => spread.Form!).SetValidator(group).When(spread => spread.Form is not null);
        RuleFor(spread => spread.Panel!).SetValidator(group).When(spread => spread.Panel is not null);
        RuleFor(spread => spread.Material!).SetValidator(group).When(spread => spread.Material is not null);
    }
}

/// <summary>What the spread of a group must satisfy.</summary>
internal sealed class SpreadGroupInputRules : AbstractValidator<SpreadGroupInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SpreadGroupInputRules(UnitSystem units)
    {
        RuleFor(group => group.Low).Within(Ranges.SpreadLow, units);
        RuleFor(group => group.High).Within(Ranges.SpreadHigh, units);
    }
}
