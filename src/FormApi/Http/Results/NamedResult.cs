namespace FormApi.Http.Results;

/// <summary>What was calculated, named by its fingerprint, on its way out in some media type.</summary>
/// <param name="fingerprint">Fingerprint of request and engine.</param>
/// <param name="media">The media type.</param>
internal abstract class NamedResult(string fingerprint, string media) : IResult
{
    /// <summary>Tells a caller who has it that nothing has changed since it last asked.</summary>
    /// <param name="context">The request.</param>
    /// <param name="fingerprint">Fingerprint of request and engine.</param>
    /// <param name="media">The media type.</param>
    /// <returns>That, or null where it has it not.</returns>
    public static UnchangedResult? UnchangedFor(HttpContext context, string fingerprint, string media)
    {
        if (EntityTag.KnownAs(context, NameOf(fingerprint), ShortNameFor(context, media)) is not { } tag)
            return null;
        RequestTrace.Remember(context, fingerprint);
        return new(tag);
    }

    /// <summary>Tells a caller who has it that nothing has changed since it last asked.</summary>
    /// <param name="context">The request.</param>
    /// <returns>That, or null where it has it not.</returns>
    public UnchangedResult? UnchangedFor(HttpContext context) => UnchangedFor(context, fingerprint, media);

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext)
    {
        RequestTrace.Remember(httpContext, fingerprint);
        httpContext.Response.ContentType = media;
        EntityTag.Add(httpContext, NameOf(fingerprint), ShortNameFor(httpContext, media));
        return WriteAsync(httpContext);
    }

    /// <summary>The fingerprint without the name of its algorithm.</summary>
    protected string Name => NameOf(fingerprint);

    /// <summary>The media type.</summary>
    protected string Media => media;

    /// <summary>Sends it.</summary>
    /// <param name="context">The request.</param>
    protected abstract Task WriteAsync(HttpContext context);

    private static string ShortNameFor(HttpContext context, string media) =>
        media == MediaTypes.Json && Preference.IsApplied(context) ? "minimal" : MediaTypes.ShortNameOf(media);

    private static string NameOf(string fingerprint) => fingerprint["sha256:".Length..];
}
