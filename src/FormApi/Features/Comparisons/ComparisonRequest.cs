using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;

namespace FormApi.Features.Comparisons;

/// <summary>One request, and what is to be tried in it.</summary>
/// <param name="Request">The request, as the operation alone takes it.</param>
/// <param name="Vary">Values to try; every combination of them is one row, the last list changing fastest. At most 500
/// combinations.</param>
/// <param name="Operation">What the request is for: <c>form</c>, with minutes and cost by assumed rates, or <c>estimate</c>, with its own.
/// Default: <c>form</c>.</param>
internal sealed record ComparisonRequest(
    JsonElement Request, IReadOnlyList<VaryInput> Vary, ComparedOperation? Operation = null) : IRequestBody<ComparisonRequest>
{
    /// <inheritdoc/>
    static JsonTypeInfo<ComparisonRequest> IRequestBody<ComparisonRequest>.TypeInfo => ComparisonRequestJson.Strict.ComparisonRequest;

    // Those of the request, as long as nothing varies them.
    LengthUnit IRequestBody<ComparisonRequest>.Units =>
        Request.ValueKind == JsonValueKind.Object && Request.TryGetProperty("units", out var units) && units.ValueKind == JsonValueKind.String
            && units.ValueEquals("in"u8) ? LengthUnit.In : LengthUnit.Mm;

    /// <inheritdoc/>
    bool IRequestBody<ComparisonRequest>.HasNullItems => Vary.Contains(null!);

    /// <inheritdoc/>
    string? IRequestBody<ComparisonRequest>.MissingField => null;

    /// <inheritdoc/>
    ValidationResult IRequestBody<ComparisonRequest>.Check() => ComparisonRequestRules.Instance.Validate(this);

    /// <summary>How many combinations there are.</summary>
    public long Combinations() => Vary.Aggregate(1L, (count, vary) => Math.Min(count, int.MaxValue) * vary.Values.Count);
}

/// <summary>What a comparison asks for.</summary>
internal enum ComparedOperation
{
    /// <summary>As POST /v1/forms.</summary>
    Form,

    /// <summary>As POST /v1/estimates.</summary>
    Estimate,
}

/// <summary>A place in the request, and the values to try there.</summary>
/// <param name="Pointer">Where (RFC 6901), such as <c>/panel/thickness</c>; objects on the way that the request leaves out are made.</param>
/// <param name="Values">The values to try, of any kind that the place takes.</param>
internal sealed record VaryInput(string Pointer, IReadOnlyList<AnyValue> Values);

/// <summary>What a comparison must satisfy.</summary>
internal sealed class ComparisonRequestRules : AbstractValidator<ComparisonRequest>
{
    /// <summary>The rules; nothing in them depends on units.</summary>
    public static ComparisonRequestRules Instance { get; } = new();

    private ComparisonRequestRules()
    {
        RuleFor(request => request.Vary.Count).Within(Ranges.VaryCount, UnitSystem.Mm).About(request => request.Vary);
        RuleFor(request => request).Custom((request, context) =>
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            for (var i = 0; i < Math.Min(request.Vary.Count, (int)Ranges.VaryCount.Max); i++)
            {
                var place = string.Create(CultureInfo.InvariantCulture, $"vary[{i}]");
                if (request.Vary[i].Values.Count == 0)
                    context.FaultAt(place + ".values", "out-of-range", "There is nothing to try.", "one value at least");
                if (!seen.Add(request.Vary[i].Pointer))
                    context.FaultAt(place + ".pointer", "contradicts", "This place is varied twice.", "each place once");
                else if (!JsonPlace.CanBeSet(request.Request, request.Vary[i].Pointer))
                    context.FaultAt(place + ".pointer", "unknown-value", "The request has no such place.", "a pointer into request (RFC 6901), such as /panel/thickness");
            }

            if (request.Combinations() > Ranges.Combinations.Max)
                context.FaultAt(checking => checking.Vary, "out-of-range", $"These values make {request.Combinations()} combinations.", Ranges.Combinations.Text(UnitSystem.Mm));
        });
    }
}
