using System.Globalization;
using System.Linq.Expressions;
using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.TestStrips;

/// <summary>What must hold for all strips.</summary>
internal static class StripRules
{
    /// <summary>Adds the rules of a list of strips.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <typeparam name="TStrip">One strip.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="strips">Its strips.</param>
    /// <param name="rule">What one strip must satisfy.</param>
    /// <param name="units">The caller's units.</param>
    public static void AddStripRules<T, TStrip>(
        this AbstractValidator<T> rules, Expression<Func<T, IReadOnlyList<TStrip>>> strips, IValidator<TStrip> rule, UnitSystem units)
    {
        var given = strips.Compile();
        Expression<Func<T, int>> count = request => given(request).Count;
        Expression<Func<T, IEnumerable<TStrip>>> each = request => given(request).Take((int)Ranges.StripCount.Max);
        rules.RuleFor(count).Within(Ranges.StripCount, units).About(strips);
        rules.RuleForEach(each).SetValidator(rule).About(strips);
    }

    /// <summary>Adds the rules of a list of wanted values.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="targets">Its wanted values, or null.</param>
    /// <param name="range">What each may be.</param>
    /// <param name="units">The caller's units.</param>
    public static void AddTargetRules<T>(
        this AbstractValidator<T> rules, Expression<Func<T, IReadOnlyList<double>?>> targets, AllowedRange range, UnitSystem units)
    {
        var given = targets.Compile();
        Expression<Func<T, int?>> count = request => Count(given(request));
        rules.RuleFor(count).Within(Ranges.TargetCount, units).About(targets);
        rules.RuleFor(request => request).Custom((request, context) =>
        {
            var wanted = given(request) ?? [];
            for (var i = 0; i < Math.Min(wanted.Count, (int)Ranges.TargetCount.Max); i++)
            {
                if (!(wanted[i] > range.MinIn(units) && wanted[i] <= range.MaxIn(units)))
                {
                    context.FaultAt(
                        targets,
                        double.IsFinite(wanted[i]) ? "out-of-range" : "not-finite",
                        double.IsFinite(wanted[i]) ? "The value is outside its range." : FiniteRule.Message,
                        range.Text(units),
                        "[" + i.ToString(CultureInfo.InvariantCulture) + "]");
                }
            }
        });
    }

    private static int? Count(IReadOnlyList<double>? targets) => targets?.Count;
}
