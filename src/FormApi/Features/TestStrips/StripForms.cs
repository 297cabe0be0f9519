using System.Linq.Expressions;
using FluentValidation;
using FormApi.Features.Forms;
using FormApi.Features.Predictions;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Prediction;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>Faceted forms that strips are pulled over.</summary>
internal static class StripForms
{
    /// <summary>A form in the library's units.</summary>
    /// <param name="stations">Its folds.</param>
    /// <param name="lever">From its last fold, or half a facet past a full one, to the hand.</param>
    /// <param name="units">The caller's units.</param>
    public static FacetedBar Of(IReadOnlyList<StandingStationInput> stations, double lever, UnitSystem units) => new(
        new StandingForm(
            [.. stations.SkipLast(1).Select(station => units.ToMm(station.FacetAfter))],
            [.. stations.Select(station => Angle.FromDegrees(station.Angle).Radians)],
            FacetedBar.UsualFoldRadiusMm),
        PredictionDefaults.EndsOf(stations),
        units.ToMm(lever));

    /// <summary>Adds the rules of a strip's form.</summary>
    /// <typeparam name="TStrip">The strip.</typeparam>
    /// <param name="rules">Its rules.</param>
    /// <param name="stations">The form's folds, or null.</param>
    /// <param name="units">The caller's units.</param>
    public static void AddStripForm<TStrip>(
        this AbstractValidator<TStrip> rules, Expression<Func<TStrip, IReadOnlyList<StandingStationInput>?>> stations, UnitSystem units)
    {
        var given = stations.Compile();
        Expression<Func<TStrip, int?>> count = strip => CountOf(given(strip));
        Expression<Func<TStrip, IEnumerable<StandingStationInput>>> each = strip =>
            (given(strip) ?? Array.Empty<StandingStationInput>()).Take((int)Ranges.StripStations.Max);
        rules.RuleFor(count).Within(Ranges.StripStations, units).About(stations);
        rules.RuleForEach(each).SetValidator(new StandingStationInputRules(units)).About(stations);
    }

    private static int? CountOf(IReadOnlyList<StandingStationInput>? stations) => stations?.Count;
}
