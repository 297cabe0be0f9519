using System.Collections.Frozen;

namespace FormApi.Http.Problems;

/// <summary>Every kind of problem this service answers with: code, status, title, explanation.</summary>
internal static class ProblemKinds
{
    /// <summary>The body is empty.</summary>
    public static ProblemKind EmptyBody { get; } = new("empty-body", 400, "The request has no body", "Send a JSON document; the contract shows working examples.");

    /// <summary>The body is not JSON.</summary>
    public static ProblemKind MalformedJson { get; } = new("malformed-json", 400, "The body is not JSON", "The line and the position of the first fault are named. Numbers are written plainly, text in double quotes, no comma after the last item.");

    /// <summary>The body nests too deep.</summary>
    public static ProblemKind TooDeep { get; } = new("too-deep", 400, "The body nests too deep", "No request of this service needs more than a few levels.");

    /// <summary>A field that the contract does not know.</summary>
    public static ProblemKind UnknownField { get; } = new("unknown-field", 400, "A field is not known", "A misspelt field must not be ignored by a calculation. The nearest known spelling is suggested.");

    /// <summary>A field is missing.</summary>
    public static ProblemKind MissingField { get; } = new("missing-field", 400, "A field is missing", "The contract says which fields are required and what the others default to.");

    /// <summary>A field appears twice.</summary>
    public static ProblemKind DuplicatedField { get; } = new("duplicated-field", 400, "A field appears twice", "Send it once; we do not guess which one you meant.");

    /// <summary>A value of another type.</summary>
    public static ProblemKind WrongType { get; } = new("wrong-type", 400, "A value has the wrong type", "Numbers are JSON numbers; only lengths in inches may be text, such as 4 1/2, and gauges such as 20 ga. Points are arrays of two numbers.");

    /// <summary>A null where a value is needed.</summary>
    public static ProblemKind NullNotAllowed { get; } = new("null-not-allowed", 400, "A value is null", "Leave an optional field out, or give it a value.");

    /// <summary>A word that is not one of those allowed.</summary>
    public static ProblemKind UnknownValue { get; } = new("unknown-value", 400, "A word is not known", "The words allowed are listed with the fault.");

    /// <summary>Values that cannot be calculated with.</summary>
    public static ProblemKind InvalidValues { get; } = new("invalid-values", 422, "Some values cannot be used", "The shape of the request is right, but values are outside their ranges or contradict each other. All of them are listed.");

    /// <summary>No answer exists.</summary>
    public static ProblemKind NoSolution { get; } = new("no-solution", 422, "What was asked has no answer", "Every value is in its range, yet together they leave no form that can be folded or no curve that can be wrapped. The fault names the field and what would work.");

    /// <summary>A form with a failed check, asked for by a machine.</summary>
    public static ProblemKind CannotBeMade { get; } = new("cannot-be-made", 422, "The form has a failed check", "A machine never receives a form that cannot be made. Every failed check is a fault with its id as code, what was found, and the nearest change that would pass.");

    /// <summary>No order of the folds exists.</summary>
    public static ProblemKind ProgramImpossible { get; } = new("program-impossible", 422, "No order of the folds exists on these tools", "It is proved: from the finished form backwards, every last fold strikes the tools or is too short for them, in every state that could be before it. Every fold at fault is named with why, and with the tool, facet or split that would help.");

    /// <summary>No order of the folds was found.</summary>
    public static ProblemKind ProgramNotFound { get; } = new("program-not-found", 422, "No order of the folds was found on these tools", "Every order that was tried fails, but it is not proved that none works: the search knows only simple ways in and out for the part. Every fold at fault is named with why, and with the tool, facet or split that would help.");

    /// <summary>No key or token, or none that is known.</summary>
    public static ProblemKind Unauthorized { get; } = new("unauthorized", 401, "No key, or not a known one", "Send a key in X-Api-Key, or a token as Authorization: Bearer, as the WWW-Authenticate header says.");

    /// <summary>A key or token that does not open this.</summary>
    public static ProblemKind Forbidden { get; } = new("forbidden", 403, "The key does not open this", "The key or token is known, but not for this path: it lacks the scope.");

    /// <summary>No such place.</summary>
    public static ProblemKind NotFound { get; } = new("not-found", 404, "Nothing is here", "The contract at /openapi/v1.json lists every path.");

    /// <summary>A method this path does not answer.</summary>
    public static ProblemKind MethodNotAllowed { get; } = new("method-not-allowed", 405, "This path does not answer that method", "The Allow header lists the methods it answers.");

    /// <summary>No media type that the caller accepts.</summary>
    public static ProblemKind NotAcceptable { get; } = new("not-acceptable", 406, "No acceptable media type", "The detail lists the media types there are.");

    /// <summary>The body arrives too slowly.</summary>
    public static ProblemKind BodyTooSlow { get; } = new("body-too-slow", 408, "The body arrives too slowly", "The detail names the limit and the setting that moves it. Send the body at once; only a batch may be sent bit by bit.");

    /// <summary>The body is too large.</summary>
    public static ProblemKind TooLarge { get; } = new("too-large", 413, "The body is too large", "The detail names the limit and the setting that moves it.");

    /// <summary>A link that holds no request.</summary>
    public static ProblemKind BrokenLink { get; } = new("broken-link", 400, "The link holds no request", "A link holds the JSON of a request, deflated (RFC 1951), in base64url without padding (RFC 4648). Take it whole from an answer; chat and mail programs like to cut long links.");

    /// <summary>A link that is too long.</summary>
    public static ProblemKind LinkTooLong { get; } = new("link-too-long", 414, "The link is too long", "A link holds 4096 characters at most; send a longer request with POST.");

    /// <summary>The body is of another media type.</summary>
    public static ProblemKind UnsupportedMediaType { get; } = new("unsupported-media-type", 415, "The body's media type is not known here", "Send application/json (a batch: application/x-ndjson) in UTF-8; where compression is at fault, Accept-Encoding lists the kinds that are known.");

    /// <summary>A request the server could not read.</summary>
    public static ProblemKind BadRequest { get; } = new("bad-request", 400, "The request could not be read", "The request breaks the rules of HTTP or of this path's query.");

    /// <summary>Too many at once.</summary>
    public static ProblemKind TooMany { get; } = new("too-many-requests", 429, "Too many calculations at once", "Try again after the time in Retry-After.");

    /// <summary>Too slow.</summary>
    public static ProblemKind TooSlow { get; } = new("too-slow", 503, "The calculation took too long", "Try again after the time in Retry-After, or ask for less at once.");

    /// <summary>About to stop.</summary>
    public static ProblemKind Stopping { get; } = new("stopping", 503, "The service is about to stop", "Send it again after the time in Retry-After: another copy of the service answers, or this one once it has started again.");

    /// <summary>Our bug.</summary>
    public static ProblemKind Bug { get; } = new("internal-error", 500, "Something went wrong here", "A fault of this service, not of the request. The trace id leads to it in the log.");

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<ProblemKind> All { get; } =
    [
        EmptyBody, MalformedJson, TooDeep, UnknownField, MissingField, DuplicatedField, WrongType, NullNotAllowed, UnknownValue,
        BadRequest,
        BrokenLink,
        Unauthorized, Forbidden,
        NotFound,
        MethodNotAllowed,
        NotAcceptable,
        BodyTooSlow,
        TooLarge,
        LinkTooLong,
        UnsupportedMediaType,
        InvalidValues,
        NoSolution,
        CannotBeMade, ProgramImpossible, ProgramNotFound, TooMany, Bug, TooSlow, Stopping,
    ];

    private static readonly FrozenDictionary<string, ProblemKind> ByCode = All.ToFrozenDictionary(
        kind => kind.Code, StringComparer.Ordinal);

    /// <summary>The kind with a code, or null.</summary>
    /// <param name="code">The code.</param>
    public static ProblemKind? Find(string code) => ByCode.GetValueOrDefault(code);

    /// <summary>The kind for a bare status.</summary>
    /// <param name="status">HTTP status.</param>
    public static ProblemKind OfStatus(int status) => status switch
    {
        401 => Unauthorized,
        403 => Forbidden,
        404 => NotFound,
        405 => MethodNotAllowed,
        406 => NotAcceptable,
        408 => BodyTooSlow,
        413 => TooLarge,
        414 => LinkTooLong,
        415 => UnsupportedMediaType,
        429 => TooMany,
        503 => TooSlow,
        >= 500 => Bug,
        _ => BadRequest,
    };
}
