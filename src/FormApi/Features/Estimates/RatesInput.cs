using System.Text.Json.Serialization;
using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Estimates;

namespace FormApi.Features.Estimates;

/// <summary>
/// What work takes and what labour and sheet cost. A rate that is left out is an assumption of this project, not measured in a shop.
/// </summary>
/// <param name="Labour">An hour of one person's work [currency/h]. Default: 60, a nominal price without a currency.</param>
/// <param name="Overhead">What rent, power and the office add, as a share of labour and sheet. Default: 0.15; 0 where prices include
/// it.</param>
/// <param name="MinimumCharge">Least price of a job [currency]. Default: an hour of <c>labour</c>.</param>
/// <param name="FormSheet">How the form's sheet is bought. Default: a nominal price by mass of its metal, in no currency.</param>
/// <param name="PanelSheet">How the panel's sheet is bought. Default: a nominal price by mass of its metal, in no currency.</param>
/// <param name="Form">Times of building the form.</param>
/// <param name="Panel">Times of a panel, the first of the batch.</param>
internal sealed record RatesInput(
    double? Labour = null,
    double? Overhead = null,
    double? MinimumCharge = null,
    SheetPriceInput? FormSheet = null,
    SheetPriceInput? PanelSheet = null,
    FormRatesInput? Form = null,
    PanelRatesInput? Panel = null);

/// <summary>What sheet costs, by mass or by the stock sheet, and how much of it a job pays for.</summary>
/// <param name="PerMass">Price of a kilogram or pound [currency/kg or currency/lb].</param>
/// <param name="PerSheet">Price of a stock sheet [currency].</param>
/// <param name="Sheet">Which of <c>panel.stockSheets</c> blanks are nested on, by name; <c>perSheet</c> needs it. Default: the one that costs
/// least.</param>
/// <param name="Buy"><c>area-used</c>: blanks and a share of scrap, the rest goes back to stock; <c>whole-sheets</c>: every sheet begun.
/// Default: <c>area-used</c>.</param>
/// <param name="ScrapShare">Share of the sheet that is scrap, with <c>area-used</c>. Default: what a stock sheet full of blanks leaves over,
/// 0.15 where none is large enough.</param>
internal sealed record SheetPriceInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? PerMass = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? PerSheet = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Sheet = null,
    SheetBuying? Buy = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? ScrapShare = null)
{
    /// <summary>Whether there is any price.</summary>
    /// <param name="price">The price, or null.</param>
    public static bool IsGiven(SheetPriceInput? price) => price is { PerMass: not null } or { PerSheet: not null };
}

/// <summary>Time of one element of work: something once, and something for each of what it counts.</summary>
/// <param name="Fixed">Once for a form or a panel, where there is anything to do [min]. Default: the element's.</param>
/// <param name="Each">For each of what it counts [min], or for its length [min/m or min/ft]. Default: the element's.</param>
internal sealed record ElementRateInput(double? Fixed = null, double? Each = null);

/// <summary>Times of building a form.</summary>
/// <param name="Layout">Setting out the blank, and each mark. Default: 10 and 1.5 min.</param>
/// <param name="Cutting">Getting the sheet out, and each length of cut, all round. Default: 5 min and 2 min/m.</param>
/// <param name="TestStrips">Test strips, and each one: cut, folded, measured. Default: 0 and 6 min.</param>
/// <param name="SetUp">Setting up the brake with its first stop, and each change of the stop. Default: 20 and 3 min.</param>
/// <param name="Handling">Each time the blank is put into the brake. Default: 0 and 2 min.</param>
/// <param name="Folding">Each fold. Default: 0 and 1 min.</param>
/// <param name="Checking">Making a template, and each check against it. Default: 5 and 2 min.</param>
/// <param name="Finishing">Cleaning, and each length of edge deburred, all round. Default: 5 min and 2 min/m.</param>
/// <param name="Ribs">Drawing a rib, and each one cut and set, where ribs back the form. Default: 15 and 10 min.</param>
internal sealed record FormRatesInput(
    ElementRateInput? Layout = null,
    ElementRateInput? Cutting = null,
    ElementRateInput? TestStrips = null,
    ElementRateInput? SetUp = null,
    ElementRateInput? Handling = null,
    ElementRateInput? Folding = null,
    ElementRateInput? Checking = null,
    ElementRateInput? Finishing = null,
    ElementRateInput? Ribs = null);

/// <summary>Times of a panel once the form is built; laying up to pulling are for each person of the crew.</summary>
/// <param name="SetUp">Getting the bench ready, once for the batch, and fixing each form to it. Default: 5 and 10 min.</param>
/// <param name="Cutting">Getting the sheet out, and each length of cut, all round. Default: 4 min and 1.5 min/m.</param>
/// <param name="Marking">Registration marks, and each one. Default: 1 and 0.5 min.</param>
/// <param name="LayingUp">Each time the panel is laid up to its marks and taken off. Default: 0 and 3 min.</param>
/// <param name="Clamping">Each clamp put on and taken off. Default: 0 and 1 min.</param>
/// <param name="Rigging">Each time a winch or press is rigged and taken off, where one pulls. Default: 0 and 10 min.</param>
/// <param name="Pulling">Each pull round the form and back. Default: 0 and 2 min.</param>
/// <param name="Trimming">Each length trimmed at both ends, where <c>panel.trim</c> leaves any. Default: 0 min and 3 min/m.</param>
/// <param name="Checking">Each bend against its template. Default: 0 and 3 min.</param>
/// <param name="Finishing">Cleaning, and each length of edge deburred, all round. Default: 2 min and 1 min/m.</param>
internal sealed record PanelRatesInput(
    ElementRateInput? SetUp = null,
    ElementRateInput? Cutting = null,
    ElementRateInput? Marking = null,
    ElementRateInput? LayingUp = null,
    ElementRateInput? Clamping = null,
    ElementRateInput? Rigging = null,
    ElementRateInput? Pulling = null,
    ElementRateInput? Trimming = null,
    ElementRateInput? Checking = null,
    ElementRateInput? Finishing = null);

/// <summary>What rates must satisfy.</summary>
internal sealed class RatesInputRules : AbstractValidator<RatesInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public RatesInputRules(UnitSystem units)
    {
        var price = new SheetPriceInputRules(units);
        RuleFor(rates => rates.Labour).Within(Ranges.Money, units);
        RuleFor(rates => rates.Overhead).Within(Ranges.Overhead, units);
        RuleFor(rates => rates.MinimumCharge).Within(Ranges.Money, units);
        RuleFor(rates => rates.FormSheet!).SetValidator(price).When(rates => rates.FormSheet is not null);
        RuleFor(rates => rates.PanelSheet!).SetValidator(price).When(rates => rates.PanelSheet is not null);
        RuleFor(rates => rates.Form!).SetValidator(new FormRatesInputRules(units)).When(rates => rates.Form is not null);
        RuleFor(rates => rates.Panel!).SetValidator(new PanelRatesInputRules(units)).When(rates => rates.Panel is not null);
    }
}

/// <summary>What the price of sheet must satisfy.</summary>
internal sealed class SheetPriceInputRules : AbstractValidator<SheetPriceInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SheetPriceInputRules(UnitSystem units)
    {
        RuleFor(price => price.PerMass).Within(Ranges.Money, units);
        RuleFor(price => price.PerSheet).Within(Ranges.Money, units);
        RuleFor(price => price.PerSheet).Null().Else("choose-one", "Sheet has one price.", "perMass or perSheet")
            .When(price => price.PerMass is not null);
        RuleFor(price => price.Sheet).NotNull().Else("missing-property", "A price of a stock sheet needs its name.", "a name of panel.stockSheets")
            .When(price => price.PerSheet is not null);
        RuleFor(price => price.ScrapShare).Within(Ranges.ScrapShare, units);
        RuleFor(price => price.ScrapShare).Null()
            .Else("not-applicable", "Whole sheets are paid for with whatever is left over.", "only with buy area-used")
            .When(price => price.Buy == SheetBuying.WholeSheets);
    }
}

/// <summary>What the time of an element must satisfy.</summary>
internal sealed class ElementRateInputRules : AbstractValidator<ElementRateInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ElementRateInputRules(UnitSystem units)
    {
        RuleFor(rate => rate.Fixed).Within(Ranges.WorkMinutes, units);
        RuleFor(rate => rate.Each).Within(Ranges.WorkMinutes, units);
    }
}

/// <summary>What the times of a form must satisfy.</summary>
internal sealed class FormRatesInputRules : AbstractValidator<FormRatesInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public FormRatesInputRules(UnitSystem units)
    {
        var element = new ElementRateInputRules(units);
        RuleFor(form => form.Layout!).SetValidator(element).When(form => form.Layout is not null);
        RuleFor(form => form.Cutting!).SetValidator(element).When(form => form.Cutting is not null);
        RuleFor(form => form.TestStrips!).SetValidator(element).When(form => form.TestStrips is not null);
        RuleFor(form => form.SetUp!).SetValidator(element).When(form => form.SetUp is not null);
        RuleFor(form => form.Handling!).SetValidator(element).When(form => form.Handling is not null);
        RuleFor(form => form.Folding!).SetValidator(element).When(form => form.Folding is not null);
        RuleFor(form => form.Checking!).SetValidator(element).When(form => form.Checking is not null);
        RuleFor(form => form.Finishing!).SetValidator(element).When(form => form.Finishing is not null);
        RuleFor(form => form.Ribs!).SetValidator(element).When(form => form.Ribs is not null);
    }
}

/// <summary>What the times of a panel must satisfy.</summary>
internal sealed class PanelRatesInputRules : AbstractValidator<PanelRatesInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public PanelRatesInputRules(UnitSystem units)
    {
        var element = new ElementRateInputRules(units);
        RuleFor(panel => panel.SetUp!).SetValidator(element).When(panel => panel.SetUp is not null);
        RuleFor(panel => panel.Cutting!).SetValidator(element).When(panel => panel.Cutting is not null);
        RuleFor(panel => panel.Marking!).SetValidator(element).When(panel => panel.Marking is not null);
        RuleFor(panel => panel.LayingUp!).SetValidator(element).When(panel => panel.LayingUp is not null);
        RuleFor(panel => panel.Clamping!).SetValidator(element).When(panel => panel.Clamping is not null);
        RuleFor(panel => panel.Rigging!).SetValidator(element).When(panel => panel.Rigging is not null);
        RuleFor(panel => panel.Pulling!).SetValidator(element).When(panel => panel.Pulling is not null);
        RuleFor(panel => panel.Trimming!).SetValidator(element).When(panel => panel.Trimming is not null);
        RuleFor(panel => panel.Checking!).SetValidator(element).When(panel => panel.Checking is not null);
        RuleFor(panel => panel.Finishing!).SetValidator(element).When(panel => panel.Finishing is not null);
    }
}
