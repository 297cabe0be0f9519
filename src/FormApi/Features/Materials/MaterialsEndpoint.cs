using FormApi.Http.Problems;
using FormApi.Http.Queries;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming.Materials;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Materials;

/// <summary><c>GET /v1/materials</c> and <c>/v1/materials/{id}</c>: the table in use, each value with its source.</summary>
internal static class MaterialsEndpoint
{
    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapMaterials(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/v1/materials", List)
            .Describe("listMaterials", "Materials", "Sheet materials, each value with its source and status.");
        routes.MapGet("/v1/materials/{id}", One)
            .Describe("getMaterial", "Materials", "One sheet material, each value with its source and status.");
    }

    /// <summary>Lists the materials.</summary>
    /// <param name="units">Units of the values: <c>mm</c> (MPa, kg/m³) or <c>in</c> (psi, lb/in³). Default: <c>mm</c>.</param>
    private static Results<TableResult<MaterialsAnswer>, ProblemResult> List(string? units = null) =>
        UnitsQuery.TryRead(units, out var system, out var problem)
            ? new TableResult<MaterialsAnswer>($"materials-{system.LengthName}", () => MaterialsAnswer.In(system), MaterialsAnswerJson.Default.MaterialsAnswer)
            : problem;

    /// <summary>Shows one material.</summary>
    /// <param name="id">Id of the material.</param>
    /// <param name="units">Units of the values: <c>mm</c> (MPa, kg/m³) or <c>in</c> (psi, lb/in³). Default: <c>mm</c>.</param>
    private static Results<TableResult<MaterialAnswer>, ProblemResult, NotFoundResult> One(string id, string? units = null)
    {
        if (!UnitsQuery.TryRead(units, out var system, out var problem))
            return problem;
        if (MaterialCatalog.Default.TryFindNamed(id, out var material))
        {
            return new TableResult<MaterialAnswer>(
                $"material-{material.Id}-{system.LengthName}", () => MaterialAnswer.From(material, system), MaterialsAnswerJson.Default.MaterialAnswer);
        }

        var near = Spelling.Nearest(id, MaterialCatalog.Default.All.Select(known => known.Id));
        return new NotFoundResult(near is null ? "Unknown material." : $"Unknown material. Did you mean {near}?");
    }
}
