using FluentValidation.Results;
using Forming;

namespace FormApi.Http.Requests;

/// <summary>A body that can be read, checked and answered.</summary>
/// <typeparam name="TSelf">The body's own type.</typeparam>
internal interface IRequestBody<TSelf>
    where TSelf : IRequestBody<TSelf>
{
    /// <summary>How it is read.</summary>
    static abstract System.Text.Json.Serialization.Metadata.JsonTypeInfo<TSelf> TypeInfo { get; }

    /// <summary>The caller's units.</summary>
    LengthUnit Units { get; }

    /// <summary>Whether a list holds a null: the one thing strict reading lets through.</summary>
    bool HasNullItems { get; }

    /// <summary>Pointer of a field that is missing because of what another one says, or null.</summary>
    string? MissingField { get; }

    /// <summary>Checks its values.</summary>
    /// <returns>All faults.</returns>
    ValidationResult Check();
}
