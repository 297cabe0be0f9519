using FormApi.Features.Forms;
using FormApi.Http;
using Forming.Plans;

namespace FormApi.Operations;

/// <summary><c>/health/live</c>: the process answers. <c>/health/ready</c>: the tables are loaded and a known plan comes out.</summary>
internal static class Health
{
    private static readonly Lazy<bool> Ready = new(ComputeKnownPlan);

    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Where to.</param>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => Answer("live", 200))
            .Describe<HealthAnswer>("getLiveness", "Operations", "Whether the process answers.");
        routes.MapGet("/health/ready", () => Ready.Value ? Answer("ready", 200) : Answer("not-ready", 503))
            .Describe<HealthAnswer>("getReadiness", "Operations", "Whether the tables are loaded and a known plan comes out.")
            .Produces<HealthAnswer>(503, "application/json");
    }

    private static IResult Answer(string status, int code) =>
        Results.Json(new HealthAnswer(status, Engine.Version), AnswerJson.Default.HealthAnswer, statusCode: code);

    private static bool ComputeKnownPlan()
    {
        var request = FormDefaults.Apply(new(
            LengthUnit.Mm,
            new(new("ss-304"), LeadIn: 80, LeadOut: 150, new ArcInput(90, 90), Width: 600, Thickness: 1.2),
            new(new("steel-cr-cs"), FoldRadius: 2, LeadIn: 60, LeadOut: 60, Thickness: 2),
            new(Length: 1250)));
        var specs = FormSpecs.From(request);
        return FormPlan.Compute(specs.Panel, specs.Form, specs.Brake, specs.Marks, CancellationToken.None).Form.Stations.Count > 1;
    }
}
