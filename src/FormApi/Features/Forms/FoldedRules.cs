using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.Forms;

/// <summary>What every request about the folds of a form must satisfy.</summary>
internal static class FoldedRules
{
    /// <summary>Adds the rules of form, panel, brake, marks and stations.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="units">The caller's units.</param>
    /// <param name="isFlatUsed">Whether the flat blank of a form given by its stations has a use.</param>
    /// <param name="isPulledOn">Whether a panel is pulled over it.</param>
    public static void AddFoldedRules<T>(
        this AbstractValidator<T> rules, UnitSystem units, Func<T, bool> isFlatUsed, Func<T, bool> isPulledOn)
        where T : class, IFoldedRequest
    {
        rules.RuleFor(request => request.Form!).SetValidator(new FormInputRules(units))
            .When(request => request is { Form: not null, Stations: null });
        rules.RuleFor(request => request.Form!).SetValidator(new FormInputRules(units, mustHaveSheet: true))
            .When(request => request.Stations is not null && isFlatUsed(request));
        rules.RuleFor(request => request.Form!).SetValidator(new FormInputRules(units, isStanding: true))
            .When(request => request.Stations is not null && !isFlatUsed(request));
        rules.RuleFor(request => request.Panel!).SetValidator(new PanelInputRules(units)).When(request => request.Panel is not null);
        rules.RuleFor(request => request.Brake!).SetValidator(new BrakeInputRules(units)).When(request => request.Brake is not null);
        rules.RuleFor(request => request.Marks!).SetValidator(new MarksInputRules(units)).When(request => request.Marks is not null);
        rules.AddStationsRules(Ranges.StationCount, units);
        rules.AddUnusedRules(isFlatUsed, isPulledOn);
        rules.AddLeadOutRule(Ranges.StationCount);
    }

    /// <summary>Refuses what a form given by its stations leaves no use for.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="isFlatUsed">Whether the flat blank has a use, and with it the neutral factor.</param>
    /// <param name="isPulledOn">Whether a panel is pulled over the form, so that it gives.</param>
    public static void AddUnusedRules<T>(this AbstractValidator<T> rules, Func<T, bool> isFlatUsed, Func<T, bool> isPulledOn)
        where T : class, IFoldedRequest => rules.When(request => request.Stations is not null, () =>
    {
        rules.Unused(request => request.Brake);
        rules.Unused(request => request.Marks);
        rules.Unused(request => request.Form!.Width).When(request => !isPulledOn(request));
        rules.Unused(request => request.Form!.Stepping);
        rules.Unused(request => request.Form!.Grain);
        rules.Unused(request => request.Form!.Backing).When(request => !isPulledOn(request));
        rules.Unused(request => request.Form!.NeutralFactor).When(request => !isFlatUsed(request));
        rules.Unused(request => request.Form!.Stop);
    });

    /// <summary>Refuses what a panel over a form given by its stations has no use for.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="isJudged">Whether the panel is held against its tolerance and its sheet's scatter.</param>
    public static void AddStandingPanelRules<T>(this AbstractValidator<T> rules, bool isJudged = false)
        where T : class, IFoldedRequest => rules.When(request => request is { Stations: not null, Panel: not null }, () =>
    {
        rules.Unused(request => request.Panel!.Trim);
        rules.Unused(request => request.Panel!.Grain);
        rules.Unused(request => request.Panel!.Clamp!.Height).When(request => request.Panel!.Clamp is not null);
        rules.Unused(request => request.Panel!.Springback!.Model).When(request => request.Panel!.Springback is not null);
        rules.Unused(request => request.Panel!.Springback!.Factor).When(request => request.Panel!.Springback is not null);
        rules.Unused(request => request.Panel!.StockSheets);
        if (isJudged)
            return;
        rules.Unused(request => request.Panel!.Tolerance);
        rules.Unused(request => request.Panel!.Scatter);
    });

    /// <summary>Pointer of a field that is missing because of what another one says, or null.</summary>
    /// <param name="request">The request.</param>
    public static string? MissingField(IFoldedRequest request)
    {
        if (request.Stations is null && request.Panel is null)
            return "/panel";
        return (request.Panel is { } panel ? FormRequest.MissingOf(panel) : null)
            ?? (request.Stations is null ? null : MissingStanding(request.Form));
    }

    /// <summary>Pointer of what is missing of a form that is given by its stations: nothing of it is chosen; or null.</summary>
    /// <param name="form">The form.</param>
    public static string? MissingStanding(FormInput? form) => form switch
    {
        null => "/form",
        { Material: null } => "/form/material",
        { FoldRadius: null } => "/form/foldRadius",
        { LeadIn: null } => "/form/leadIn",
        { LeadOut: null } => "/form/leadOut",
        _ => null,
    };
}
