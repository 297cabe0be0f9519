using FormApi.Operations;

namespace FormApi.Http;

/// <summary>A picture or file on its way out.</summary>
/// <param name="bytes">Its bytes.</param>
/// <param name="media">Its media type.</param>
/// <param name="extension">Short name of the media type, which ends the file's name.</param>
/// <param name="fingerprint">Fingerprint of what was calculated.</param>
/// <param name="kind">What it is, which begins the file's name.</param>
internal sealed class FileResult(byte[] bytes, string media, string extension, string fingerprint, string kind = "form") : IResult
{
    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        RequestLog.Remember(httpContext, fingerprint);
        var response = httpContext.Response;
        response.ContentType = media is "text/csv" ? "text/csv; charset=utf-8; header=present" : media;
        response.Headers.ContentDisposition = $"inline; filename=\"{kind}-{fingerprint["sha256:".Length..][..12]}.{extension}\"";
        EntityTag.Add(httpContext, fingerprint["sha256:".Length..], extension);
        await response.BodyWriter.WriteAsync(bytes, httpContext.RequestAborted);
    }
}
