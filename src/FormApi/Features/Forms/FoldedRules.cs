using System.Linq.Expressions;
using FluentValidation;
using FormApi.Features.Forms;
using FormApi.Features.Predictions;
using FormApi.Http;

namespace FormApi.Features.Inspections;

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
        Expression<Func<T, int?>> count = request => CountOf(request.Stations);
        Expression<Func<T, IEnumerable<StandingStationInput>>> each = request => (request.Stations ?? Array.Empty<StandingStationInput>()).Take((int)Ranges.StationCount.Max);
        rules.RuleFor(count).Within(Ranges.StationCount, units).OverridePropertyName("stations");
        rules.RuleForEach(each).SetValidator(new StandingStationInputRules(units)).OverridePropertyName("stations");
        rules.RuleFor(request => request).Custom((request, context) =>
        {
            if (request.Stations is not { } stations)
                return;
            PredictionRequestRules.CheckUnused(request.Form, request.Brake, request.Marks, context, isFlatUsed(request));
            PredictionRequestRules.CheckLeadOut(stations, request.Form, context);
        });
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

    /// <summary>Whether a list holds a null.</summary>
    /// <param name="request">The request.</param>
    public static bool HasNull(IFoldedRequest request) =>
        request.Panel is { } panel && FormRequest.HasNull(panel) || request.Stations is { } stations && stations.Contains(null);

    private static int? CountOf(IReadOnlyList<StandingStationInput>? stations) => stations?.Count;
}
