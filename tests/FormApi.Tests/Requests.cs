using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Requests to start from.</summary>
public static class Requests
{
    /// <summary>Every committed example: operation, name, body.</summary>
    public static IEnumerable<(string Name, JsonObject Body)> Examples() => Examples("computeForm");

    /// <summary>Every committed example of predictions.</summary>
    public static IEnumerable<(string Name, JsonObject Body)> Predictions() => Examples("predictPanel");

    /// <summary>Every committed example of programs.</summary>
    public static IEnumerable<(string Name, JsonObject Body)> Programs() => Examples("programBrake");

    /// <summary>Where each operation on test strips is asked.</summary>
    private static readonly Dictionary<string, string> StripPaths = new()
    {
        ["learnStop"] = "/v1/test-strips/stop",
        ["learnSpringback"] = "/v1/test-strips/springback",
        ["learnNeutralFactor"] = "/v1/test-strips/neutral-factor",
        ["learnPrintThrough"] = "/v1/test-strips/print-through",
    };

    private static readonly Dictionary<string, string> AccuracyPaths = new()
    {
        ["computeTolerances"] = "/v1/tolerances",
        ["inspectForm"] = "/v1/inspections",
    };

    private static readonly Dictionary<string, string> PanelPaths = new()
    {
        ["correctPanel"] = "/v1/panels/corrections",
    };

    private static readonly Dictionary<string, string> FormPaths = new()
    {
        ["computeForm"] = "/v1/forms",
        ["drawForm"] = "/v1/forms/drawing",
        ["predictPanel"] = "/v1/forms/prediction",
        ["programBrake"] = "/v1/programs",
    };

    private static readonly Dictionary<string, string> EstimatePaths = new()
    {
        ["estimateJob"] = "/v1/estimates",
    };

    private static readonly Dictionary<string, string> ComparisonPaths = new()
    {
        ["compareJobs"] = "/v1/comparisons",
    };

    /// <summary>The path of every operation that takes a body.</summary>
    public static IReadOnlyDictionary<string, string> Paths { get; } =
        FormPaths.Concat(StripPaths).Concat(AccuracyPaths).Concat(PanelPaths).Concat(EstimatePaths).Concat(ComparisonPaths).ToDictionary();

    /// <summary>The path of an operation.</summary>
    /// <param name="operation">Its name.</param>
    public static string PathOf(string operation) => Paths[operation];

    /// <summary>A committed example.</summary>
    /// <param name="operation">Name of the operation.</param>
    /// <param name="name">Name of the example.</param>
    public static JsonObject Example(string operation, string name) =>
        JsonNode.Parse(File.ReadAllText(Repository.PathOf("openapi", "examples", $"{operation}.{name}.request.json")))!.AsObject();

    /// <summary>Operation and name of every committed example on test strips.</summary>
    public static TheoryData<string, string> StripExamples() => ExamplesOf(StripPaths.Keys);

    /// <summary>Operation and name of every committed example on accuracy: error budgets and inspections.</summary>
    public static TheoryData<string, string> AccuracyExamples() => ExamplesOf(AccuracyPaths.Keys);

    /// <summary>Operation and name of every committed example of measured panels.</summary>
    public static TheoryData<string, string> PanelExamples() => ExamplesOf(PanelPaths.Keys);

    /// <summary>Operation and name of every committed example of estimates.</summary>
    public static TheoryData<string, string> EstimateExamples() => ExamplesOf(EstimatePaths.Keys);

    private static TheoryData<string, string> ExamplesOf(IEnumerable<string> operations)
    {
        var examples = new TheoryData<string, string>();
        foreach (var operation in operations)
        {
            foreach (var path in Directory.GetFiles(Repository.PathOf("openapi", "examples"), operation + ".*.request.json").Order(StringComparer.Ordinal))
                examples.Add(operation, Path.GetFileName(path).Split('.')[1]);
        }

        return examples;
    }

    /// <summary>A plain arc.</summary>
    public static JsonObject Arc() => JsonNode.Parse("""
        {
          "units": "mm",
          "panel": {
            "material": { "id": "ss-304" }, "thickness": 1.2, "width": 600, "leadIn": 80, "leadOut": 150,
            "curve": { "type": "arc", "radius": 90, "sweep": 90 }
          },
          "form": { "material": { "id": "steel-cr-cs" }, "thickness": 2, "foldRadius": 2, "leadIn": 60, "leadOut": 60 },
          "brake": { "length": 1250 }
        }
        """)!.AsObject();

    /// <summary>The form of a plain arc as it stands after folding, given by its stations.</summary>
    public static JsonObject Standing() => JsonNode.Parse("""
        {
          "units": "mm",
          "panel": {
            "material": { "id": "ss-304" }, "thickness": 1.2, "width": 600, "leadIn": 80, "leadOut": 150,
            "curve": { "type": "arc", "radius": 90, "sweep": 60 }
          },
          "form": { "material": { "id": "steel-cr-cs" }, "thickness": 2, "foldRadius": 2, "leadIn": 60, "leadOut": 60 },
          "stations": [
            { "angle": 8, "facetAfter": 19 }, { "angle": 16, "facetAfter": 19.3 }, { "angle": 16, "facetAfter": 19.3 },
            { "angle": 16, "facetAfter": 19.3 }, { "angle": 16, "facetAfter": 19 }, { "angle": 8, "facetAfter": 60 }
          ]
        }
        """)!.AsObject();

    /// <summary>A form by its stations, and a leaf brake to fold it on.</summary>
    public static JsonObject Program() => JsonNode.Parse("""
        {
          "units": "mm",
          "form": { "material": { "id": "steel-cr-cs" }, "thickness": 2, "foldRadius": 2, "leadIn": 90, "leadOut": 90, "width": 600 },
          "brake": { "length": 1250 },
          "stations": [
            { "angle": 8, "facetAfter": 23 }, { "angle": 16, "facetAfter": 23 }, { "angle": 16, "facetAfter": 23 },
            { "angle": 16, "facetAfter": 23 }, { "angle": 16, "facetAfter": 23 }, { "angle": 8, "facetAfter": 90 }
          ]
        }
        """)!.AsObject();

    /// <summary>A hoop by its stations: closed but for a gap, so that it could not come off a beam.</summary>
    public static JsonObject Hoop()
    {
        var stations = new JsonArray();
        for (var i = 0; i < 23; i++)
            stations.Add(new JsonObject { ["angle"] = 15, ["facetAfter"] = i < 22 ? 16 : 30 });
        return Program().With("/stations", stations.ToJsonString()).With("/form/leadIn", "30").With("/form/leadOut", "30");
    }

    /// <summary>A copy with one field set, made or removed.</summary>
    /// <param name="request">The request.</param>
    /// <param name="place">Where, such as <c>/panel/curve/radius</c>.</param>
    /// <param name="json">The value as JSON; null removes the field.</param>
    public static JsonObject With(this JsonObject request, string place, string? json)
    {
        var copy = request.DeepClone().AsObject();
        var steps = place.Split('/')[1..];
        JsonNode here = copy;
        foreach (var step in steps[..^1])
        {
            if (here is JsonArray array)
                here = array[int.Parse(step, System.Globalization.CultureInfo.InvariantCulture)]!;
            else
                here = here[step] ?? (here.AsObject()[step] = new JsonObject());
        }

        if (json is null)
            here.AsObject().Remove(steps[^1]);
        else
            here.AsObject()[steps[^1]] = JsonNode.Parse(json);
        return copy;
    }

    public static IEnumerable<(string Name, JsonObject Body)> Examples(string operation) =>
        Directory.GetFiles(Repository.PathOf("openapi", "examples"), operation + ".*.request.json").Order(StringComparer.Ordinal)
            .Select(path => (Path.GetFileName(path).Split('.')[1], JsonNode.Parse(File.ReadAllText(path))!.AsObject()));
}
