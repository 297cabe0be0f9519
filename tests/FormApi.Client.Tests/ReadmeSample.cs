using FormApi.Client.Models;
using Microsoft.Kiota.Abstractions.Authentication;
using Microsoft.Kiota.Http.HttpClientLibrary;

namespace FormApi.Client.Tests;

/// <summary>What the package's README shows.</summary>
internal static class ReadmeSample
{
    /// <summary>Plans a form.</summary>
    /// <param name="http">Calls the service.</param>
    public static async Task<string> Plan(HttpClient http)
    {
        using var adapter = new HttpClientRequestAdapter(new AnonymousAuthenticationProvider(), httpClient: http);
        var client = new FormApiClient(adapter);
        var answer = await client.V1.Forms.PostAsync(new FormRequest
        {
            Units = LengthUnit.Mm,
            Panel = new()
            {
                Material = new() { Id = "ss-304" },
                Thickness = 1.2,
                Width = 600,
                LeadIn = 80,
                LeadOut = 150,
                Curve = new ArcInput { Type = CurveShape_type.Arc, Radius = 90, Sweep = 90 },
            },
            Form = new() { Material = new() { Id = "steel-cr-cs" }, Thickness = 2, FoldRadius = 2, LeadIn = 60, LeadOut = 60 },
            Brake = new() { Length = 1250 },
        });
        return $"{answer!.Verdict}: {answer.Form!.Folds} folds, turned {answer.Form.Sweep:0.0}° in all";
    }
}
