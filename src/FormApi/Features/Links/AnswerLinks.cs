using System.IO.Compression;
using FormApi.Features.Forms;
using FormApi.Features.Programs;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Requests;

namespace FormApi.Features.Links;

/// <summary>The links that go with an answer.</summary>
internal static class AnswerLinks
{
    private const string Path = "/v1/links/";

    /// <summary>Links of a form.</summary>
    /// <param name="shown">The form request.</param>
    /// <param name="isTaper">Whether its folds are not parallel, so that it has no program.</param>
    public static LinksResult OfForm(ReadOnlySpan<byte> shown, bool isTaper)
    {
        var form = LinkText.Of(shown);
        return new(
            To(form, "form"),
            To(form, "drawing"),
            isTaper ? null : To(LinkText.Of(CanonicalJson.Without("predict"u8, shown)), "program"));
    }

    /// <summary>Links of the form that another calculation planned, or null members where it planned none.</summary>
    /// <param name="request">The request as one for a form, or null.</param>
    public static LinksResult OfPlanned(FormRequest? request) => request is null
        ? new(null, null, null)
        : OfForm(ShownRequest.Of(FormDefaults.Apply(request)).Canonical.Span, request.Panel.Curve is TaperInput);

    /// <summary>Links of a program.</summary>
    /// <param name="request">The program's request with every default shown.</param>
    /// <param name="shown">The same in its canonical spelling.</param>
    public static LinksResult OfProgram(ProgramRequest request, ReadOnlySpan<byte> shown)
    {
        var planned = OfPlanned(request.Stations is null ? ProgramDefaults.AsForm(request) : null);
        return planned with { Program = To(LinkText.Of(shown), "program") };
    }

    /// <summary>The shortest link, for a symbol that a camera reads.</summary>
    /// <param name="shown">The request in its canonical spelling.</param>
    /// <param name="what">What it leads to: <c>drawing</c> or <c>program</c>.</param>
    public static string? Shortest(ReadOnlySpan<byte> shown, string what) => To(LinkText.Of(shown, CompressionLevel.SmallestSize), what);

    private static string? To(string? text, string what) => text is null ? null : Path + text + "/" + what;
}
