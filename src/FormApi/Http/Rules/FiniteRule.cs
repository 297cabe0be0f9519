using FluentValidation;
using FluentValidation.Validators;

namespace FormApi.Http.Rules;

/// <summary>A number is finite: JSON can write larger ones than a double holds.</summary>
/// <typeparam name="T">The record that holds the number.</typeparam>
/// <typeparam name="TNumber">Type of the number, nullable or not.</typeparam>
internal sealed class FiniteRule<T, TNumber> : PropertyValidator<T, TNumber>
{
    /// <inheritdoc/>
    public override string Name => "not-finite";

    /// <inheritdoc/>
    public override bool IsValid(ValidationContext<T> context, TNumber value) =>
        FiniteRule.NumberOf(value) is not { } number || double.IsFinite(number);

    /// <inheritdoc/>
    protected override string GetDefaultMessageTemplate(string errorCode) => FiniteRule.Message;
}

/// <summary>What the rules of numbers share.</summary>
internal static class FiniteRule
{
    /// <summary>What is wrong with a number that is not finite.</summary>
    public const string Message = "The number is too large (over about 1.8e308).";

    /// <summary>The number that a field holds, or null where it was left out.</summary>
    /// <typeparam name="TNumber">Type of the number, nullable or not.</typeparam>
    /// <param name="value">What it holds.</param>
    public static double? NumberOf<TNumber>(TNumber value) => value switch
    {
        double number => number,
        int whole => whole,
        _ => null,
    };
}
