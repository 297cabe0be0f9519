using FormApi.Features.Forms;
using FormApi.Http.Links;

namespace FormApi.Features.Programs;

/// <summary>Links of a program.</summary>
internal static class ProgramLinks
{
    /// <summary>The program's own link, and those of the form that was planned.</summary>
    /// <param name="request">The request with every default shown.</param>
    /// <param name="shown">The same in its canonical spelling.</param>
    public static LinksResult Of(ProgramRequest request, ReadOnlySpan<byte> shown) =>
        Planned(request) with { Program = AnswerLinks.To(shown, "program") };

    private static LinksResult Planned(ProgramRequest request) =>
        FormLinks.OfPlanned(request.Stations is null ? ProgramDefaults.AsForm(request) : null, canBeMade: true);
}
