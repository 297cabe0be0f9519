using System.Linq.Expressions;
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

    /// <summary>What a fault of the rule before says, where that depends on the record.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <typeparam name="TField">Type of the field.</typeparam>
    /// <param name="rule">The rule.</param>
    /// <param name="code">Stable code.</param>
    /// <param name="message">What is wrong, in words; no braces.</param>
    /// <param name="allowed">What would do, in words.</param>
    public static IRuleBuilderOptions<T, TField> Else<T, TField>(
        this IRuleBuilderOptions<T, TField> rule, string code, Func<T, string> message, Func<T, string> allowed) =>
        rule.WithErrorCode(code).WithMessage(message).WithState(allowed);

    /// <summary>The field that a rule is about, where it is reckoned from something else.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <typeparam name="TValue">Type of what is checked.</typeparam>
    /// <typeparam name="TField">Type of the field.</typeparam>
    /// <param name="rule">The rule.</param>
    /// <param name="field">The field.</param>
    public static IRuleBuilderOptions<T, TValue> About<T, TValue, TField>(
        this IRuleBuilderOptions<T, TValue> rule, Expression<Func<T, TField>> field) => rule.OverridePropertyName(FieldNames.PathOf(field));

    /// <summary>Adds a fault at a field of the record being checked, or at a place within it.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <typeparam name="TField">Type of the field.</typeparam>
    /// <param name="context">The check; the rule must be on the record itself.</param>
    /// <param name="field">The field.</param>
    /// <param name="code">Stable code.</param>
    /// <param name="message">What is wrong, in words.</param>
    /// <param name="allowed">What would do, in words.</param>
    /// <param name="within">The place within it, such as <c>[2][0]</c>.</param>
    public static void FaultAt<T, TField>(
        this ValidationContext<T> context,
        Expression<Func<T, TField>> field,
        string code,
        string message,
        string? allowed,
        string within = "") =>
        context.FaultAt(FieldNames.PathOf(field) + within, code, message, allowed);

    /// <summary>Adds a fault at a field that no member stands for.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <param name="context">The check; the rule must be on the record itself.</param>
    /// <param name="path">Contract path of the field.</param>
    /// <param name="code">Stable code.</param>
    /// <param name="message">What is wrong, in words.</param>
    /// <param name="allowed">What would do, in words.</param>
    public static void FaultAt<T>(
        this ValidationContext<T> context, string path, string code, string message, string? allowed) =>
        context.AddFailure(
            new ValidationFailure(context.PropertyChain.BuildPropertyPath(path), message) { ErrorCode = code, CustomState = allowed });
}
