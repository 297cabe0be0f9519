using System.Text.Json;
using FluentValidation;

namespace FormApi.Http.Rules;

/// <summary>What rules call fields.</summary>
internal static class FieldNames
{
    /// <summary>Names them as the wire does, in every rule that is written from now on.</summary>
    public static void SpellAsOnTheWire() => ValidatorOptions.Global.PropertyNameResolver =
        static (_, member, _) => member is null ? null : JsonNamingPolicy.CamelCase.ConvertName(member.Name);
}
