using System.Globalization;
using System.Linq.Expressions;
using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.Forms;

/// <summary>What stations must satisfy that give a form.</summary>
internal static class StationsRules
{
    // What a form's answer loses by its nine decimals, and a tape reads off.
    private const double SameLength = 1e-6;

    private static readonly Expression<Func<StandingStationInput, double>> LastFacet = station => station.FacetAfter;

    /// <summary>Adds the rules of the stations, each by itself.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="count">How many there may be.</param>
    /// <param name="units">The caller's units.</param>
    public static void AddStationsRules<T>(this AbstractValidator<T> rules, AllowedRange count, UnitSystem units)
        where T : class, IStationsRequest
    {
        Expression<Func<T, int?>> given = request => CountOf(request.Stations);
        Expression<Func<T, IEnumerable<StandingStationInput>>> each = request =>
            (request.Stations ?? Array.Empty<StandingStationInput>()).Take((int)count.Max);
        rules.RuleFor(given).Within(count, units).About(request => request.Stations);
        rules.RuleForEach(each).SetValidator(new StandingStationInputRules(units)).About(request => request.Stations);
    }

    /// <summary>Refuses stations whose last facet is not the form's lead-out.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="count">How many stations there may be.</param>
    public static void AddLeadOutRule<T>(this AbstractValidator<T> rules, AllowedRange count)
        where T : class, IStationsRequest => rules.RuleFor(request => request).Custom((request, context) =>
    {
        if (request.Stations is not [.., var last] || request.Stations.Count > count.Max)
            return;
        var (given, leadOut) = (last.FacetAfter, request.Form!.LeadOut!.Value);
        if (!(Math.Abs(given - leadOut) <= SameLength * Math.Max(1, leadOut)))
        {
            context.FaultAt(
                checking => checking.Stations,
                "contradicts",
                "The facet after the last fold is the lead-out, but form.leadOut differs from it.",
                "the same length as form.leadOut",
                string.Create(CultureInfo.InvariantCulture, $"[{request.Stations.Count - 1}].") + FieldNames.PathOf(LastFacet));
        }
    });

    /// <summary>Refuses a field where stations are given.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <typeparam name="TField">Type of the field.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="field">The field.</param>
    /// <param name="why">What leaves no use for it.</param>
    public static IRuleBuilderOptions<T, TField> Unused<T, TField>(
        this AbstractValidator<T> rules, Expression<Func<T, TField>> field, string why = "the form already exists") =>
        rules.RuleFor(field).Null().Else("not-applicable", $"It is not used when stations are given: {why}.", "leave it out, or leave out stations");

    /// <summary>Whether a list holds a null.</summary>
    /// <param name="request">The request.</param>
    public static bool HasNull(IStationsRequest request) =>
        request.Panel is { } panel && FormRequest.HasNull(panel) || request.Stations is { } stations && stations.Contains(null);

    private static int? CountOf(IReadOnlyList<StandingStationInput>? stations) => stations?.Count;
}
