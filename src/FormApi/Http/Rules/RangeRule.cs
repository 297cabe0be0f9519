using FluentValidation;
using FluentValidation.Validators;
using FormApi.Http.Units;

namespace FormApi.Http.Rules;

/// <summary>A finite number is within its range; nothing is asked of a number that was left out.</summary>
/// <typeparam name="T">The record that holds the number.</typeparam>
/// <typeparam name="TNumber">Type of the number, nullable or not.</typeparam>
/// <param name="range">The range.</param>
/// <param name="units">The caller's units.</param>
internal sealed class RangeRule<T, TNumber>(AllowedRange range, UnitSystem units) : PropertyValidator<T, TNumber>, IRangeRule
{
    private const double ShownTo = 1e-9;
    private const string Why = "Why";

    // Limits are shown with nine decimals: what is shown must pass, and so must the limit itself converted by the caller. Zero is zero in
    // every unit: a length just below it is none.
    private readonly double _min = range.MinIn(units) is var min && min == 0 ? 0 : min - ShownTo;
    private readonly double _max = range.MaxIn(units) + ShownTo;

    /// <inheritdoc/>
    public AllowedRange Range => range;

    /// <inheritdoc/>
    public override string Name => "out-of-range";

    /// <inheritdoc/>
    public override bool IsValid(ValidationContext<T> context, TNumber value)
    {
        if (FiniteRule.NumberOf(value) is not { } number || !double.IsFinite(number))
            return true;
        if (number <= _max && (range.AboveMin ? number > range.Min : number >= _min))
            return true;
        context.MessageFormatter.AppendArgument(Why, (number > _max ? range.TooLarge : range.TooSmall) ?? "The value is outside its range.");
        return false;
    }

    /// <inheritdoc/>
    protected override string GetDefaultMessageTemplate(string errorCode) => "{" + Why + "}";
}

/// <summary>A rule that holds a number against a range.</summary>
internal interface IRangeRule
{
    /// <summary>The range.</summary>
    AllowedRange Range { get; }
}
