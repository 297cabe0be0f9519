using System.Reflection;
using FluentValidation;
using FluentValidation.Validators;
using FormApi.Http.Units;

namespace FormApi.Http.Rules;

/// <summary>
/// The ranges that the rules hold fields against, by type and field: of every validator there is, so that none can be forgotten.
/// </summary>
internal static class FieldRanges
{
    /// <summary>Every validator of the service, by its type, in every way it is made.</summary>
    internal static ILookup<Type, IValidator> Validators { get; } = typeof(FieldRanges).Assembly.GetTypes()
        .Where(type => type.IsClass && !type.IsAbstract && typeof(IValidator).IsAssignableFrom(type))
        .OrderBy(type => type.FullName, StringComparer.Ordinal)
        .SelectMany(
            type => WaysToMake(type.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic).Single()),
            (type, made) => (Type: type, Validator: made))
        .ToLookup(made => made.Type, made => made.Validator);

    private static readonly ILookup<(Type Type, string Field), AllowedRange> Ranges = Validators
        .SelectMany(made => made
            .SelectMany(RangesOf)
            .Select(field => (Key: (CheckedBy(made.Key), field.Name), field.Range)))
        .Distinct()
        .ToLookup(rule => rule.Key, rule => rule.Range);

    /// <summary>The ranges of a field; more than one where they depend on something else.</summary>
    /// <param name="type">The record.</param>
    /// <param name="field">Contract name of the field.</param>
    public static IReadOnlyList<AllowedRange> Of(Type type, string field) => [.. Ranges[(type, field)]];

    // A rule without a member's name hands the whole record to another validator.
    private static IEnumerable<(string Name, AllowedRange Range)> RangesOf(IValidator validator) => validator.CreateDescriptor().Rules
        .SelectMany(rule => rule.Components.Select(component => component.Validator).SelectMany(check => check switch
        {
            IRangeRule inRange => [(rule.PropertyName, inRange.Range)],
            IChildValidatorAdaptor child when string.IsNullOrEmpty(rule.PropertyName) =>
                Validators[child.ValidatorType].SelectMany(RangesOf),
            _ => Enumerable.Empty<(string Name, AllowedRange Range)>(),
        }));

    /// <summary>The record that a validator checks.</summary>
    /// <param name="validator">The validator's type.</param>
    internal static Type CheckedBy(Type validator) => validator.GetInterfaces()
        .Single(one => one.IsGenericType && one.GetGenericTypeDefinition() == typeof(IValidator<>)).GetGenericArguments()[0];

    // The ranges of a record may depend on where it is, which its validator is given.
    private static IEnumerable<IValidator> WaysToMake(ConstructorInfo constructor) => constructor.GetParameters()
        .Aggregate<ParameterInfo, IEnumerable<object[]>>(
            [[]], (ways, parameter) => ways.SelectMany(way => ValuesOf(parameter.ParameterType).Select(value => (object[])[.. way, value])))
        .Select(arguments => (IValidator)constructor.Invoke(arguments));

    private static IEnumerable<object> ValuesOf(Type type) =>
        type == typeof(UnitSystem) ? [UnitSystem.Mm] : type == typeof(bool) ? [false, true] : Enum.GetValues(type).Cast<object>();
}
