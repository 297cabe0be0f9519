using FormApi.Features.Forms;
using FormApi.Http;
using Forming.Plans;
using Forming.Verification;

namespace FormApi.Operations;

/// <summary><c>/health/live</c>: the process answers. <c>/health/ready</c>: every check value and a known plan come out.</summary>
internal static class Health
{
    private static readonly Lazy<bool> KnownPlan = new(ComputeKnownPlan);

    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Where to.</param>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => Results.Json(new HealthAnswer("live", Engine.Version), AnswerJson.Default.HealthAnswer))
            .Describe<HealthAnswer>("getLiveness", "Operations", "Whether the process answers.");
        routes.MapGet("/health/ready", Ready)
            .Describe<ReadinessAnswer>("getReadiness", "Operations", "Whether every check value of /v1/verification and a known plan come out.")
            .Produces<ReadinessAnswer>(503, "application/json");
    }

    private static IResult Ready(EngineVerification verification)
    {
        var report = verification.Report;
        var ready = report.Verdict == CheckVerdict.Pass && KnownPlan.Value;
        var answer = new ReadinessAnswer(
            ready ? "ready" : "not-ready",
            Engine.Version,
            report.Values.Count,
            [.. report.Failed, .. KnownPlan.Value ? Array.Empty<string>() : ["known-plan"]]);
        return Results.Json(answer, AnswerJson.Default.ReadinessAnswer, statusCode: ready ? 200 : 503);
    }

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
