namespace FormApi.Http.Results;

/// <summary>A picture or file on its way out.</summary>
/// <param name="bytes">Its bytes.</param>
/// <param name="media">Its media type.</param>
/// <param name="fingerprint">Fingerprint of what was calculated.</param>
/// <param name="kind">What it is, which begins the file's name.</param>
internal abstract class FileResult(byte[] bytes, string media, string fingerprint, string kind) : NamedResult(fingerprint, media)
{
    /// <inheritdoc/>
    protected override async Task WriteAsync(HttpContext context)
    {
        var response = context.Response;
        if (Media == MediaTypes.Csv)
            response.ContentType = "text/csv; charset=utf-8; header=present";
        // A picture that is opened on its own is styled from within, and loads nothing.
        if (Media == MediaTypes.Svg)
            response.Headers.ContentSecurityPolicy = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";
        response.Headers.ContentDisposition = $"inline; filename=\"{kind}-{Name[..12]}.{MediaTypes.ShortNameOf(Media)}\"";
        await response.BodyWriter.WriteAsync(bytes, context.RequestAborted);
    }
}
