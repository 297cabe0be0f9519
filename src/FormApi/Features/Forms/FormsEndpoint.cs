using System.Buffers;
using System.Text.Json;
using Forming.Plans;
using Forming.Results;
using FormApi.Http;

namespace FormApi.Features.Forms;

/// <summary><c>POST /v1/forms</c>: from a finished curve and a material to everything needed to mark, fold and use a form.</summary>
internal static class FormsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Where to.</param>
    public static void MapForms(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/forms", Compute)
        .DescribeComputation<FormRequest, FormAnswer>(
            "computeForm",
            "Forms",
            "Stations, angles, blanks, springback, checks and cautions for one form.",
            "Takes the finished curve of a panel, the form it is to be wrapped over and the brake the form is folded on. "
            + "Everything that can be computed is answered with 200, stations included; a failed check makes the verdict cannot-be-made and names the nearest change that would pass. "
            + "The same request gives a byte-identical answer, whatever the order of its fields or the spelling of its numbers.");

    private static IResult Compute(JsonBody<FormRequest> body, CancellationToken cancellation)
    {
        if (body.Problem is { } problem)
            return problem;
        var request = FormDefaults.Apply(body.Value);
        var units = UnitSystem.Of(request.Units);
        var specs = FormSpecs.From(request);
        FormPlan plan;
        try
        {
            plan = FormPlan.Compute(specs.Panel, specs.Form, specs.Brake, specs.Marks, cancellation);
        }
        catch (NoSolutionException none)
        {
            return NoSolution(none, units, body);
        }

        var shown = ToJson(request);
        var fingerprint = Fingerprint.Of(shown.Utf8);
        return new AnswerResult<FormAnswer>(FormAnswers.From(plan, specs, units, shown, fingerprint), AnswerJson.Default.FormAnswer, fingerprint);
    }

    private static RawJson ToJson(FormRequest request)
    {
        var buffer = new ArrayBufferWriter<byte>(2048);
        using var writer = new Utf8JsonWriter(buffer, WireJson.Writing);
        JsonSerializer.Serialize(writer, request, WireJson.Requests.FormRequest);
        writer.Flush();
        return new(buffer.WrittenMemory);
    }

    private static ProblemResult NoSolution(NoSolutionException none, UnitSystem units, JsonBody<FormRequest> body)
    {
        var pointer = Wire.Pointer(none.Subject);
        var message = units.Wording.Of(none.Wording);
        var fault = new Fault(pointer, none.Code, message, body.GivenAt(pointer), units.Wording.OfOptional(none.Allowed));
        return new(Problems.NoSolution, message, [fault], none.Code);
    }
}
