namespace FormApi.Http.Links;

/// <summary>
/// Self-contained links, relative to the address of the service: each holds the whole request, so that a controller or a phone needs
/// nothing else.
/// </summary>
/// <param name="Form">The form as JSON; null where the request plans none, or the link would be longer than 4 KiB.</param>
/// <param name="Drawing">The form as a picture or a file, by Accept; null as <c>form</c> is.</param>
/// <param name="Program">The brake's program; null where a check failed, no brake is given, or the link
/// would be longer than 4 KiB.</param>
internal sealed record LinksResult(string? Form, string? Drawing, string? Program);
