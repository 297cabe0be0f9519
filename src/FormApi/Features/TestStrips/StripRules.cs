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
        this AbstractValidator<T> rules, Func<T, IReadOnlyList<TStrip>> strips, IValidator<TStrip> rule, UnitSystem units)
    {
        Expression<Func<T, int>> count = request => strips(request).Count;
        Expression<Func<T, IEnumerable<TStrip>>> each = request => strips(request).Take((int)Ranges.StripCount.Max);
        rules.RuleFor(count).Within(Ranges.StripCount, units).OverridePropertyName("strips");
        rules.RuleForEach(each).SetValidator(rule).OverridePropertyName("strips");
    }

    /// <summary>Adds the rules of a list of wanted values.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="rules">The rules of the request.</param>
    /// <param name="targets">Its wanted values, or null.</param>
    /// <param name="range">What each may be.</param>
    /// <param name="units">The caller's units.</param>
    public static void AddTargetRules<T>(
        this AbstractValidator<T> rules, Func<T, IReadOnlyList<double>?> targets, AllowedRange range, UnitSystem units)
    {
        Expression<Func<T, int?>> count = request => Count(targets(request));
        rules.RuleFor(count).Within(Ranges.TargetCount, units).OverridePropertyName("targets");
        rules.RuleFor(request => request).Custom((request, context) =>
        {
            var wanted = targets(request) ?? [];
            for (var i = 0; i < Math.Min(wanted.Count, (int)Ranges.TargetCount.Max); i++)
            {
                if (!(wanted[i] > range.MinIn(units) && wanted[i] <= range.MaxIn(units)))
                {
                    context.Fault(
                        "targets[" + i.ToString(CultureInfo.InvariantCulture) + "]",
                        double.IsFinite(wanted[i]) ? "out-of-range" : "not-finite",
                        double.IsFinite(wanted[i]) ? "The value is outside its range." : FiniteRule.Message,
                        range.Text(units));
                }
            }
        });
    }

    private static int? Count(IReadOnlyList<double>? targets) => targets?.Count;
}
