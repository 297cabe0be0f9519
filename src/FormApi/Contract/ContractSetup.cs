using FormApi.Hosting.Access;
using FormApi.Http;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>The contract: <c>/openapi/v1.json</c>, <c>/openapi/v1.yaml</c>, and pages to read and try it at <c>/docs</c>.</summary>
internal static class ContractSetup
{
    /// <summary>Adds the generator.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddContract(this WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton<ISerializerDataContractResolver, WireContractResolver>();
        builder.Services.AddEndpointsApiExplorer();
        builder.Services.AddSwaggerGen(contract =>
        {
            contract.SwaggerDoc(ContractFile.Version, new OpenApiInfo
            {
                Title = "FormApi",
                Version = EngineVersion.Current,
                License = new OpenApiLicense { Name = "MIT", Identifier = "MIT" },
                Description =
                    "Faceted forms for wrapped sheet-metal bends: from a finished curve and a material to fold stations, blanks, checks and cautions. "
                    + "Stateless: every answer is a function of the request and the engine's version. "
                    + "Lengths are in the request's units, angles in degrees. A failure is a problem (RFC 9457); its type leads to an explanation. "
                    + "Short answers leave out request, basis, links, outlines, explanations and what passed. "
                    + "Where units is in, a length may also be text such as 4 1/2, and a gauge 20 ga.",
            });
            contract.AddServer(new() { Url = "/", Description = "The service that published this contract." });
            contract.AddSecurityDefinition(ApiKeyHandler.SchemeName, new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.ApiKey,
                In = ParameterLocation.Header,
                Name = ApiKeyHandler.Header,
                Description = "A key that the operator gave out.",
            });
            contract.AddSecurityDefinition("Bearer", new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                BearerFormat = "JWT",
                Description = "A token of the operator's issuer; its claim scope has compute, metrics or docs.",
            });
            // One of them, or neither where the service is open.
            contract.AddSecurityRequirement(document => new() { [new(ApiKeyHandler.SchemeName, document)] = [] });
            contract.AddSecurityRequirement(document => new() { [new("Bearer", document)] = [] });
            contract.AddSecurityRequirement(_ => []);
            contract.SupportNonNullableReferenceTypes();
            contract.SchemaFilter<ContractSchemaFilter>();
            contract.OperationFilter<ContractOperationFilter>();
            contract.DocumentFilter<CurveUnionFilter>();
            contract.DocumentFilter<TagTextsFilter>();
            contract.DocumentFilter<MinimalSchemas>();
        });
    }

    /// <summary>Adds the routes.</summary>
    /// <param name="app">The service.</param>
    public static void MapContract(this IEndpointRouteBuilder app)
    {
        app.MapGet("/openapi/v1.json", (HttpContext context) => Send(context, ContractFile.Json, "json", "application/json"))
            .WithMetadata(new MediaTypes("application/json")).ExcludeFromDescription();
        app.MapGet("/openapi/v1.yaml", (HttpContext context) => Send(context, ContractFile.Yaml, "yaml", "application/yaml"))
            .WithMetadata(new MediaTypes("application/yaml", "text/yaml")).ExcludeFromDescription();
        app.MapReadingPages();
    }

    private static Results<FileContentHttpResult, UnchangedResult> Send(HttpContext context, byte[] file, string media, string mediaType)
    {
        var name = EngineVersion.Current + "-contract";
        context.Response.Headers.CacheControl = "public, max-age=3600";
        if (EntityTag.KnownAs(context, name, media) is { } known)
            return new UnchangedResult(known);

        EntityTag.Add(context, name, media);
        return TypedResults.Bytes(file, mediaType);
    }
}
