using System.Globalization;
using System.Linq.Expressions;
using FluentValidation;
using FormApi.Http.Json;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.Inspections;

/// <summary>What measurements along one end of a form must satisfy.</summary>
/// <typeparam name="T">The measurements.</typeparam>
internal abstract class MeasuredEndRules<T> : AbstractValidator<T>
    where T : class, IMeasuredEnd
{
    private readonly UnitSystem _units;

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    protected MeasuredEndRules(UnitSystem units)
    {
        _units = units;
        Lengths(measured => measured.Spacings);
        Lengths(measured => measured.Facets);
        RuleFor(measured => CountOf(measured.Points)).Within(Ranges.TemplateFlats, units).About(measured => measured.Points);
        RuleFor(measured => measured).Custom((measured, context) =>
        {
            foreach (var (points, j) in (measured.Points ?? []).Take((int)Ranges.TemplateFlats.Max).Select((points, j) => (points, j)))
                Flat(context, points, string.Create(CultureInfo.InvariantCulture, $"[{j}]"));
        });
        RuleFor(measured => measured.Facets).Null().Else("choose-one", "Facets follow from spacings.", "spacings or facets, at most one of them")
            .When(measured => measured is { Points: null, Spacings: not null });
    }

    /// <summary>Holds every number of a list against a range.</summary>
    /// <param name="field">The list.</param>
    /// <param name="range">The range.</param>
    protected void Each(Expression<Func<T, IReadOnlyList<double>?>> field, AllowedRange range)
    {
        var values = field.Compile();
        RuleFor(measured => measured).Custom((measured, context) =>
        {
            var numbers = values(measured) ?? [];
            for (var i = 0; i < Math.Min(numbers.Count, (int)Ranges.MeasuredCount.Max); i++)
                Number(context, numbers[i], field, string.Create(CultureInfo.InvariantCulture, $"[{i}]"), range);
        });
    }

    /// <summary>How many there are, or null.</summary>
    /// <typeparam name="TItem">What is counted.</typeparam>
    /// <param name="values">The list, or null.</param>
    protected static int? CountOf<TItem>(IReadOnlyList<TItem>? values) => values?.Count;

    private void Lengths(Expression<Func<T, IReadOnlyList<double>?>> field)
    {
        var values = field.Compile();
        RuleFor(measured => CountOf(values(measured))).Within(Ranges.MeasuredFacets, _units).About(field);
        Each(field, Ranges.StandingFacet);
    }

    private void Flat(ValidationContext<T> context, IReadOnlyList<Pair> points, string path)
    {
        if (points.Count < Ranges.TemplatePoints.Min || points.Count > Ranges.TemplatePoints.Max)
        {
            context.FaultAt(measured => measured.Points, "out-of-range", "A flat needs at least two points, and not too many.", Ranges.TemplatePoints.Text(_units), path);
            return;
        }

        for (var i = 0; i < points.Count; i++)
        {
            Coordinate(points[i].First, i, 0);
            Coordinate(points[i].Second, i, 1);
        }

        void Coordinate(double value, int point, int axis) => Number(
            context,
            value,
            measured => measured.Points,
            string.Create(CultureInfo.InvariantCulture, $"{path}[{point}][{axis}]"),
            Ranges.Coordinate);
    }

    private void Number<TField>(
        ValidationContext<T> context, double value, Expression<Func<T, TField>> field, string within, AllowedRange range)
    {
        if (!(value >= range.MinIn(_units) && value <= range.MaxIn(_units)))
        {
            context.FaultAt(
                field,
                double.IsFinite(value) ? "out-of-range" : "not-finite",
                double.IsFinite(value) ? "The value is outside its range." : FiniteRule.Message,
                range.Text(_units),
                within);
        }
    }
}

/// <summary>What measurements must satisfy.</summary>
internal sealed class MeasuredInputRules : MeasuredEndRules<MeasuredInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public MeasuredInputRules(UnitSystem units)
        : base(units)
    {
        RuleFor(measured => CountOf(measured.Angles)).Within(Ranges.MeasuredCount, units).About(measured => measured.Angles);
        Each(measured => measured.Angles, Ranges.MeasuredAngle);
        RuleFor(measured => measured.Far!).SetValidator(new MeasuredEndInputRules(units)).When(measured => measured.Far is not null);
        RuleFor(measured => measured.Angles).NotNull().Else("choose-one", "Nothing was measured.", "angles or points")
            .When(measured => !measured.HasTemplate);
        When(measured => measured.HasTemplate, () =>
        {
            AloneWithPoints(measured => measured.Angles);
            AloneWithPoints(measured => measured.Spacings);
            AloneWithPoints(measured => measured.Facets);
            AloneWithPoints(measured => measured.Far!.Spacings).When(measured => measured.Far is not null);
            AloneWithPoints(measured => measured.Far!.Facets).When(measured => measured.Far is not null);
        });
    }

    private IRuleBuilderOptions<MeasuredInput, IReadOnlyList<double>?> AloneWithPoints(
        Expression<Func<MeasuredInput, IReadOnlyList<double>?>> field) =>
        RuleFor(field).Null().Else("choose-one", "Points replace angles, spacings and facets.", "points alone, or angles with spacings or facets");
}

/// <summary>What measurements at the far end must satisfy.</summary>
internal sealed class MeasuredEndInputRules : MeasuredEndRules<MeasuredEndInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public MeasuredEndInputRules(UnitSystem units)
        : base(units)
    {
    }
}
