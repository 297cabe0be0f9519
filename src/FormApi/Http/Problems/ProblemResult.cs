using System.Globalization;
using System.Reflection;
using System.Text.Json;
using FormApi.Http.Json;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Http.Problems;

/// <summary>A problem on its way out.</summary>
/// <param name="kind">The kind.</param>
/// <param name="detail">What went wrong this time; null takes the title.</param>
/// <param name="faults">The faults in the body, if it is at fault.</param>
/// <param name="code">A narrower code than the kind's own, or null.</param>
/// <param name="extensions">Members that only this kind of problem has, by their names on the wire, or null.</param>
internal class ProblemResult(
    ProblemKind kind,
    string? detail = null,
    IReadOnlyList<Fault>? faults = null,
    string? code = null,
    IDictionary<string, JsonElement>? extensions = null) : IResult, IEndpointMetadataProvider
{
    /// <summary>Media type of every problem.</summary>
    public const string MediaType = "application/problem+json";

    // Nobody waits longer, and an estimate that says so is worth nothing.
    private const double LongestWaitSeconds = 60;

    /// <summary>A calculation that took too long.</summary>
    /// <param name="limits">The limits.</param>
    public static ProblemResult TooSlow(Limits limits) =>
        new(ProblemKinds.TooSlow, $"It took longer than {limits.Seconds} s; the setting is {Limits.Section}:{nameof(Limits.Seconds)}.");

    /// <summary>One more than a limit allows.</summary>
    /// <param name="limit">Name of the limit among the settings.</param>
    /// <param name="allowed">What it allows.</param>
    /// <param name="after">When to try again; at least a second.</param>
    public static ProblemResult TooMany(string limit, double allowed, TimeSpan after)
    {
        var seconds = (int)Math.Clamp(Math.Ceiling(after.TotalSeconds), 1, LongestWaitSeconds);
        var name = $"{Limits.Section}__{limit}";
        return new(
            ProblemKinds.TooMany,
            string.Create(CultureInfo.InvariantCulture, $"The limit is {name}, {allowed:0.###}. Try again in {seconds} s."),
            extensions: new Dictionary<string, JsonElement> { ["limit"] = JsonSerializer.SerializeToElement(name, ProblemJson.Default.String) })
        {
            RetryAfterSeconds = seconds,
        };
    }

    /// <summary>When to try again [s]; only where that helps.</summary>
    public int RetryAfterSeconds { get; init; } = 1;

    /// <summary>The kind.</summary>
    public ProblemKind Kind => kind;

    /// <summary>Its code.</summary>
    public string Code { get; } = code ?? kind.Code;

    /// <summary>The faults in the body, if it is at fault.</summary>
    public IReadOnlyList<Fault>? Faults => faults;

    /// <summary>The problem body.</summary>
    /// <param name="instance">Path that was asked for.</param>
    /// <param name="traceId">Trace id, for the service's log.</param>
    /// <param name="within">Pointer to the part of the document that was at fault; empty for the whole.</param>
    public Problem ToProblem(string instance, string traceId, string within = "") => new(
        "/problems/" + kind.Code,
        kind.Title,
        kind.Status,
        detail ?? kind.Title + ".",
        instance,
        Code,
        traceId,
        within.Length == 0 ? faults : faults?.Select(fault => fault with { Pointer = within + fault.Pointer }).ToArray())
    {
        Extensions = extensions,
    };

    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        ProblemMetadata.Add(builder, StatusCodes.Status400BadRequest);

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = kind.Status;
        response.ContentType = MediaType;
        response.Headers.CacheControl = "no-store";
        if (kind.Status == StatusCodes.Status408RequestTimeout && HttpProtocol.IsHttp11(httpContext.Request.Protocol))
        {
            // RFC 9110, section 15.5.9: nobody waits for the rest of the body.
            response.Headers.Connection = "close";
        }

        // Counted by code, where requests are counted.
        httpContext.Features.Get<IHttpMetricsTagsFeature>()?.Tags.Add(new("formapi.problem", Code));
        if (kind.Status is 429 or 503)
            response.Headers.RetryAfter = RetryAfterSeconds.ToString(CultureInfo.InvariantCulture);
        var problem = ToProblem(httpContext.Request.Path.Value ?? "/", RequestTrace.IdOf(httpContext));
        return WholeAnswer.SendAsync(httpContext, writer => JsonSerializer.Serialize(writer, problem, ProblemJson.Default.Problem));
    }
}
