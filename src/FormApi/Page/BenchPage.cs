using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Page;

/// <summary>
/// The page at <c>/</c> for the person at the bench: files that call the service as any other caller does. They hold no job and no key, so
/// everybody who reaches the service may load them; what they call asks for the key.
/// </summary>
internal static class BenchPage
{
    // Its own files, its own service, pictures it was sent, and nothing else: no script or style inside the page.
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; worker-src 'self'; "
        + "manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>Adds the routes.</summary>
    /// <param name="app">The service.</param>
    public static void MapBenchPage(this IEndpointRouteBuilder app)
    {
        app.MapGet("/", (HttpContext context) => SendNamed(context, PageFiles.Built.StartPage)).ExcludeFromDescription();
        app.MapGet("/page/service-worker.js", SendWorker).ExcludeFromDescription();
        app.MapGet("/page/{fingerprint}/{**name}", Send).ExcludeFromDescription();
    }

    // The two whose address stays are asked for again each time, and sent only where they changed.
    private static Results<FileContentHttpResult, UnchangedResult> SendNamed(HttpContext context, PageFile file)
    {
        Guard(context).CacheControl = "no-cache";
        if (EntityTag.KnownAs(context, PageFiles.Built.Fingerprint, "page") is { } known)
            return new UnchangedResult(known);

        EntityTag.Add(context, PageFiles.Built.Fingerprint, "page");
        return TypedResults.Bytes(file.Content, file.MediaType);
    }

    // It looks after the page, which is above its own directory.
    private static Results<FileContentHttpResult, UnchangedResult> SendWorker(HttpContext context)
    {
        context.Response.Headers["Service-Worker-Allowed"] = "../";
        return SendNamed(context, PageFiles.Built.ServiceWorker);
    }

    private static Results<FileContentHttpResult, NotFound> Send(HttpContext context, string fingerprint, string? name)
    {
        if (PageFiles.Built.Find(fingerprint, name ?? "") is not { } file)
            return TypedResults.NotFound();
        Guard(context).CacheControl = "public, max-age=31536000, immutable";
        return TypedResults.Bytes(file.Content, file.MediaType);
    }

    private static IHeaderDictionary Guard(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers["Referrer-Policy"] = "no-referrer";
        return headers;
    }
}
