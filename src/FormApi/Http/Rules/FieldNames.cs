using System.Linq.Expressions;
using System.Text.Json;
using FluentValidation;
using FluentValidation.Internal;

namespace FormApi.Http.Rules;

/// <summary>What rules call fields.</summary>
internal static class FieldNames
{
    /// <summary>Names them as the wire does, in every rule that is written from now on.</summary>
    public static void SpellAsOnTheWire() => ValidatorOptions.Global.PropertyNameResolver =
        static (_, member, expression) => member is null ? null : PathOf(expression);

    /// <summary>Dotted path of a field, as the wire spells it.</summary>
    /// <param name="field">The field.</param>
    public static string PathOf(LambdaExpression field) =>
        string.Join('.', PropertyChain.FromExpression(field).ToString().Split('.').Select(JsonNamingPolicy.CamelCase.ConvertName));
}
