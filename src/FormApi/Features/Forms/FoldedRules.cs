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
    public static void AddFoldedRules<T>(this AbstractValidator<T> rules, UnitSystem units, Func<T, bool> isFlatUsed)
        where T : class, IFoldedRequest
    {
        rules.RuleFor(request => request.Form).SetValidator(new FormInputRules(units)).When(request => request.Stations is null || isFlatUsed(request));
        rules.RuleFor(request => request.Form).SetValidator(new FormInputRules(units, isStanding: true)).When(request => request.Stations is not null && !isFlatUsed(request));
        rules.RuleFor(request => request.Panel!).SetValidator(new PanelInputRules(units)).When(request => request.Panel is not null);
        rules.RuleFor(request => request.Brake!).SetValidator(new BrakeInputRules(units)).When(request => request.Brake is not null);
        rules.RuleFor(request => request.Marks!).SetValidator(new MarksInputRules(units)).When(request => request.Marks is not null);
        rules.AddStationsRules(Ranges.StationCount, units);
        rules.RuleFor(request => request).Custom((request, context) =>
        {
            if (request.Stations is null)
                return;
            CheckUnused(request, context, isFlatUsed(request));
            StationsRules.CheckLeadOut(request, Ranges.StationCount, context);
        });
    }

    /// <summary>Refuses what a form given by its stations leaves no use for.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="request">The request; with stations.</param>
    /// <param name="context">The check, on the request itself.</param>
    /// <param name="isFlatUsed">Whether the flat blank has a use, and with it the neutral factor.</param>
    public static void CheckUnused<T>(T request, ValidationContext<T> context, bool isFlatUsed = false)
        where T : class, IFoldedRequest
    {
        var form = request.Form;
        StationsRules.Unused(context, "brake", request.Brake);
        StationsRules.Unused(context, "marks", request.Marks);
        StationsRules.Unused(context, "form.width", form.Width);
        StationsRules.Unused(context, "form.stepping", form.Stepping);
        StationsRules.Unused(context, "form.grain", form.Grain);
        StationsRules.Unused(context, "form.backing", form.Backing);
        if (!isFlatUsed)
            StationsRules.Unused(context, "form.neutralFactor", form.NeutralFactor);
        StationsRules.Unused(context, "form.stop", form.Stop);
    }

    /// <summary>Refuses what a panel over a form given by its stations has no use for.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="panel">Its panel.</param>
    /// <param name="context">The check, on the request itself.</param>
    public static void CheckPanel<T>(PanelInput panel, ValidationContext<T> context)
    {
        StationsRules.Unused(context, "panel.trim", panel.Trim);
        StationsRules.Unused(context, "panel.grain", panel.Grain);
        StationsRules.Unused(context, "panel.clamp.height", panel.Clamp?.Height);
        StationsRules.Unused(context, "panel.springback.model", panel.Springback?.Model);
        StationsRules.Unused(context, "panel.springback.factor", panel.Springback?.Factor);
        StationsRules.Unused(context, "panel.stockSheets", panel.StockSheets);
    }

    /// <summary>Pointer of a field that is missing because of what another one says, or null.</summary>
    /// <param name="request">The request.</param>
    public static string? MissingField(IFoldedRequest request)
    {
        if (request.Stations is null && request.Panel is null)
            return "/panel";
        return (request.Panel is { } panel ? FormRequest.MissingOf(panel) : null)
            ?? (request.Stations is null && request.Brake is null ? "/brake" : null);
    }
}
