namespace FormApi.Http.Json;

/// <summary>What raw JSON in an answer looks like, for the contract.</summary>
/// <param name="type">The type it was written from.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class WrittenAsAttribute(Type type) : Attribute
{
    /// <summary>The type it was written from.</summary>
    public Type Type => type;
}
