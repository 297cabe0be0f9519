using FormApi.Http.Links;
using FormApi.Http.Requests;

namespace FormApi.Features.Forms;

/// <summary>Links of the form that another calculation planned.</summary>
internal static class FormLinks
{
    /// <summary>The links, or null members where none was planned.</summary>
    /// <param name="request">The request as one for a form, or null.</param>
    /// <param name="canBeMade">Whether no check failed.</param>
    public static LinksResult OfPlanned(FormRequest? request, bool canBeMade) => request is null
        ? new(null, null, null)
        : AnswerLinks.OfForm(NormalizedRequest.Of(FormDefaults.Apply(request)).Canonical.Span, canBeMade);
}
