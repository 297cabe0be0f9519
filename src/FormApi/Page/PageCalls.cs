using FormApi.Features.Forms;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using FormApi.Http.Queries;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming.Drawing.Svg;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Page;

/// <summary>What only the page asks for, so that it is not in the contract: a job in the other units, and a link as a symbol.</summary>
internal static class PageCalls
{
    // Past this a phone has to be held too near to read the symbol.
    private const int LongestAddress = 1200;

    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapPageCalls(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/page/units", InUnits).ExcludeFromDescription();
        routes.MapGet("/page/symbol", Symbol).ExcludeFromDescription();
    }

    private static Results<FileContentHttpResult, ProblemResult> InUnits(JsonBody<FormRequest> body, string? units)
    {
        if (!UnitsQuery.TryRead(units, out var wanted, out var problem))
            return problem;
        return body.Answer(request => TypedResults.Bytes(
            RawJson.Of(OtherUnits.Of(request, wanted.Unit), FormRequestJson.Strict.FormRequest).Utf8.ToArray(), MediaTypes.Json));
    }

    private static Results<FileContentHttpResult, ProblemResult> Symbol(string? address) =>
        address is { Length: > 0 and <= LongestAddress }
            ? TypedResults.Bytes(SvgSymbol.Of(address), MediaTypes.Svg)
            : new ProblemResult(ProblemKinds.LinkTooLong, $"The address has {address?.Length ?? 0} characters; 1 to {LongestAddress} are drawn.");
}
