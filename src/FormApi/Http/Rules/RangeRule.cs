using FluentValidation;
using FluentValidation.Validators;
using FormApi.Http.Units;

namespace FormApi.Http.Rules;

/// <summary>A number is finite and within its range; nothing is asked of a number that was left out.</summary>
/// <typeparam name="T">The record that holds the number.</typeparam>
/// <typeparam name="TNumber">Type of the number, nullable or not.</typeparam>
/// <param name="range">The range.</param>
/// <param name="units">The caller's units.</param>
internal sealed class RangeRule<T, TNumber>(AllowedRange range, UnitSystem units) : PropertyValidator<T, TNumber>, IRangeRule
{
    private const double ShownTo = 1e-9;

    // Limits are shown with nine decimals: what is shown must pass, and so must the limit itself converted by the caller.
    private readonly double _min = range.MinIn(units) - ShownTo;
    private readonly double _max = range.MaxIn(units) + ShownTo;

    /// <inheritdoc/>
    public AllowedRange Range => range;

    /// <inheritdoc/>
    public override string Name => "Range";

    /// <inheritdoc/>
    public override bool IsValid(ValidationContext<T> context, TNumber value)
    {
        double number;
        if (value is double floating)
            number = floating;
        else if (value is int whole)
            number = whole;
        else
            return true;

        if (number <= _max && (range.AboveMin ? number > range.Min : number >= _min))
            return true;
        context.Fault(
            context.PropertyPath,
            double.IsFinite(number) ? "out-of-range" : "not-finite",
            double.IsFinite(number) ? (number > _max ? range.TooLarge : range.TooSmall) ?? "The value is outside its range." : "The number is too large to be a number.",
            range.Text(units));
        return true;
    }
}

/// <summary>A rule that holds a number against a range.</summary>
internal interface IRangeRule
{
    /// <summary>The range.</summary>
    AllowedRange Range { get; }
}
