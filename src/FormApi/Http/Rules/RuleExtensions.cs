using FluentValidation;
using FluentValidation.Results;
using FormApi.Http.Units;

namespace FormApi.Http.Rules;

/// <summary>The words that request rules are written with.</summary>
internal static class RuleExtensions
{
    /// <summary>The number lies within a range.</summary>
    /// <typeparam name="T">The record that holds the number.</typeparam>
    /// <typeparam name="TNumber">Type of the number, nullable or not.</typeparam>
    /// <param name="rule">The rule.</param>
    /// <param name="range">The range.</param>
    /// <param name="units">The caller's units.</param>
    public static IRuleBuilderOptions<T, TNumber> Within<T, TNumber>(
        this IRuleBuilder<T, TNumber> rule, AllowedRange range, UnitSystem units) =>
        rule.SetValidator(new FiniteRule<T, TNumber>()).WithState(_ => range.Text(units))
            .SetValidator(new RangeRule<T, TNumber>(range, units)).WithState(_ => range.Text(units));

    /// <summary>What a fault of the rule before says, instead of the library's words.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <typeparam name="TField">Type of the field.</typeparam>
    /// <param name="rule">The rule.</param>
    /// <param name="code">Stable code.</param>
    /// <param name="message">What is wrong, in words; no braces.</param>
    /// <param name="allowed">What would do, in words.</param>
    public static IRuleBuilderOptions<T, TField> Else<T, TField>(
        this IRuleBuilderOptions<T, TField> rule, string code, string message, string allowed) =>
        rule.WithErrorCode(code).WithMessage(message).WithState(_ => allowed);

    /// <summary>Adds a fault.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <param name="context">The check.</param>
    /// <param name="path">Dotted path of the field.</param>
    /// <param name="code">Stable code.</param>
    /// <param name="message">What is wrong, in words.</param>
    /// <param name="allowed">What would do, in words.</param>
    public static void Fault<T>(
        this ValidationContext<T> context, string path, string code, string message, string? allowed) =>
        context.AddFailure(new ValidationFailure(path, message) { ErrorCode = code, CustomState = allowed });

    /// <summary>Adds a fault at a field of the record being checked.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <param name="context">The check; the rule must be on the record itself.</param>
    /// <param name="field">Contract name of the field.</param>
    /// <param name="code">Stable code.</param>
    /// <param name="message">What is wrong, in words.</param>
    /// <param name="allowed">What would do, in words.</param>
    public static void FaultAt<T>(
        this ValidationContext<T> context, string field, string code, string message, string? allowed) =>
        context.Fault(context.PropertyChain.BuildPropertyPath(field), code, message, allowed);
}
