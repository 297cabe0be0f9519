using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Says what each group of operations is about, in the order of a job.</summary>
internal sealed class TagTextsFilter : IDocumentFilter
{
    // In the order of a job: what comes first on the bench comes first on the page.
    private static readonly (string Name, string Text)[] Groups =
    [
        ("Forms", "From a finished curve and a material to a form, its drawings, and how the panel comes off it."),
        ("Programs", "The order of the folds on a brake."),
        ("Test strips", "From measured test strips to values for the next form."),
        ("Accuracy", "What errors of folding add up to, a folded form against its plan, and what to do after a wrong panel."),
        ("Estimates", "What a job takes in time and money."),
        ("Batches", "Many requests at once, answered as they arrive."),
        ("Comparisons", "Many variants of one request side by side."),
        ("Links", "The same answers from a link that holds the whole request."),
        ("Materials", "Sheet materials with the source and status of every value."),
        ("Gauges", "Gauge numbers as thicknesses."),
        ("References", "What the results rest on."),
        ("Verification", "The running engine against published values."),
        ("Operations", "Service health, and what its problems mean."),
    ];

    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        swaggerDoc.Tags = new HashSet<OpenApiTag>(Groups.Select(group => new OpenApiTag { Name = group.Name, Description = group.Text }));
        var paths = new OpenApiPaths();
        // An operation of no group fails here, before a page lacks it.
        foreach (var (path, item) in swaggerDoc.Paths.OrderBy(entry => PlaceOf(entry.Value)).ToArray())
            paths.Add(path, item);
        swaggerDoc.Paths = paths;
    }

    private static int PlaceOf(IOpenApiPathItem path)
    {
        var tag = path.Operations!.Values.First().Tags!.First().Name;
        var place = Array.FindIndex(Groups, group => group.Name == tag);
        return place >= 0 ? place : throw new InvalidOperationException($"The group {tag} has no text.");
    }
}
