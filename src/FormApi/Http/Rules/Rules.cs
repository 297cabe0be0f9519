using System.Text.Json;
using FluentValidation;

namespace FormApi.Http.Rules;

/// <summary>Rules of a request record; faults name fields as the wire does.</summary>
/// <typeparam name="T">The record.</typeparam>
internal abstract class Rules<T> : AbstractValidator<T>
{
    /// <summary>Sets the spelling of names before the first rule is written.</summary>
    protected Rules() => ValidatorOptions.Global.PropertyNameResolver =
        static (_, member, _) => member is null ? null : JsonNamingPolicy.CamelCase.ConvertName(member.Name);
}
