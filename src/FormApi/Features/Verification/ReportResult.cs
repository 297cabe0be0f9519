using System.Reflection;
using System.Security.Cryptography;
using System.Text.Json;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Features.Verification;

/// <summary>The results of this process, named by their content; no cache answers in its place.</summary>
/// <param name="answer">The results.</param>
internal sealed class ReportResult(VerificationAnswer answer) : IResult, IEndpointMetadataProvider
{
    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        AnswerMetadata.Add(builder, typeof(VerificationAnswer), MediaTypes.Json);

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var json = JsonSerializer.SerializeToUtf8Bytes(answer, VerificationAnswerJson.Default.VerificationAnswer);
        var tag = "verification-" + Convert.ToHexStringLower(SHA256.HashData(json).AsSpan(0, 16));
        var response = httpContext.Response;
        response.Headers.CacheControl = "no-cache";
        if (EntityTag.KnownAs(httpContext, tag) is { } known)
        {
            EntityTag.SayUnchanged(httpContext, known);
            return;
        }

        EntityTag.Add(httpContext, tag);
        response.ContentType = "application/json";
        await response.BodyWriter.WriteAsync(json, httpContext.RequestAborted);
    }
}
