using System.Collections.Frozen;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Says what each group of operations is about.</summary>
internal sealed class TagTextsFilter : IDocumentFilter
{
    private static readonly FrozenDictionary<string, string> Groups = new Dictionary<string, string>
    {
        ["Accuracy"] = "What errors of folding add up to, and a folded form against its plan.",
        ["Forms"] = "From a finished curve and a material to a form, its drawings, and how the panel comes off it.",
        ["Gauges"] = "Gauge numbers as thicknesses.",
        ["Materials"] = "Sheet materials with the source and status of every value.",
        ["Operations"] = "Whether the service is well, and what its problems mean.",
        ["Programs"] = "The order of the folds on a brake.",
        ["References"] = "What the figures rest on.",
        ["Test strips"] = "From what test strips measured to figures for the next form.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        foreach (var tag in swaggerDoc.Tags ?? new HashSet<OpenApiTag>())
            tag.Description = Groups.GetValueOrDefault(tag.Name!) ?? SummaryIn(swaggerDoc, tag.Name!);
    }

    // A group without words of its own is about what its first operation does.
    private static string? SummaryIn(OpenApiDocument document, string tag) => document.Paths.Values
        .SelectMany(path => path.Operations!.Values)
        .First(operation => operation.Tags!.Any(own => own.Name == tag)).Summary;
}
