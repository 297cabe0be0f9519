namespace FormApi.Http.Json;

/// <summary>A field that only a full answer has: a short one leaves it out.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class InFullAttribute : Attribute;
