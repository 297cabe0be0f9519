using System.Text.Json.Nodes;

namespace FormApi.Page.Tests;

/// <summary>Jobs as the service is asked for them.</summary>
internal static class Jobs
{
    /// <summary>The job that the page opens with.</summary>
    public static JsonNode CabCorner() => JsonNode.Parse("""
        {
          "units": "mm",
          "panel": {
            "material": { "id": "al-5052-h32" }, "thickness": 1.6, "width": 820, "leadIn": 60, "leadOut": 220,
            "curve": { "type": "arc", "radius": 95, "sweep": 85 }
          },
          "form": { "material": { "id": "steel-cr-cs" }, "thickness": 2, "foldRadius": 2, "leadIn": 70, "leadOut": 60 },
          "brake": { "length": 1250 }
        }
        """)!;
}
