using FormApi.Http.Problems;
using Microsoft.Net.Http.Headers;

namespace FormApi.Http.Results;

/// <summary>The media types an endpoint answers in, for callers who ask for one.</summary>
/// <param name="offered">The media types, best first.</param>
internal sealed class MediaTypes(params string[] offered)
{
    /// <summary>Answers.</summary>
    public const string Json = "application/json";

    /// <summary>Many requests, many answers.</summary>
    public const string Ndjson = "application/x-ndjson";

    /// <summary>Tables.</summary>
    public const string Csv = "text/csv";

    /// <summary>Sheets for a screen.</summary>
    public const string Svg = "image/svg+xml";

    /// <summary>Sheets for paper.</summary>
    public const string Pdf = "application/pdf";

    /// <summary>Outlines for cutting.</summary>
    public const string Dxf = "image/vnd.dxf";

    /// <summary>Solids.</summary>
    public const string Glb = "model/gltf-binary";

    /// <summary>Short name of a media type, which ends a file's name.</summary>
    /// <param name="media">The media type.</param>
    public static string ShortNameOf(string media) => media switch
    {
        Csv => "csv",
        Svg => "svg",
        Pdf => "pdf",
        Dxf => "dxf",
        Glb => "glb",
        _ => "json",
    };

    /// <summary>Refuses a request whose Accept header leaves nothing to answer with.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">The rest of the pipeline.</param>
    public static Task Negotiate(HttpContext context, RequestDelegate next)
    {
        var types = context.GetEndpoint()?.Metadata.GetMetadata<MediaTypes>();
        if (types is null || types.Choose(context.Request) is not null)
            return next(context);
        return new ProblemResult(ProblemKinds.NotAcceptable, "Available:  " + string.Join(", ", types.Offered) + ".").ExecuteAsync(context);
    }

    /// <summary>The media types, best first.</summary>
    public string[] Offered => offered;

    /// <summary>The media type to answer in, or null where none is acceptable.</summary>
    /// <param name="request">The request.</param>
    public string? Choose(HttpRequest request)
    {
        var accept = request.Headers.Accept;
        if (accept.Count == 0 || (accept.Count == 1 && (accept[0] is "*/*" or "" || accept[0] == offered[0])))
            return offered[0];
        if (!MediaTypeHeaderValue.TryParseList(accept, out var ranges))
            return offered[0];
        return offered
            .Select(type => (Type: type, Quality: QualityOf(new MediaTypeHeaderValue(type), ranges)))
            .Where(candidate => candidate.Quality > 0)
            .OrderByDescending(candidate => candidate.Quality)
            .Select(candidate => candidate.Type)
            .FirstOrDefault();
    }

    // The most specific range that covers a type decides its quality.
    private static double QualityOf(MediaTypeHeaderValue type, IEnumerable<MediaTypeHeaderValue> ranges) => ranges
        .Where(range => type.IsSubsetOf(Bare(range)))
        .OrderBy(range => range.MatchesAllTypes ? 2 : range.MatchesAllSubTypes ? 1 : 0)
        .Select(range => range.Quality ?? 1)
        .FirstOrDefault();

    private static MediaTypeHeaderValue Bare(MediaTypeHeaderValue range) => new(range.MediaType);
}
