using FormApi.Http;
using Forming.Plans;
using Forming.Results;

namespace FormApi.Features.Forms;

/// <summary>A request that was planned, ready to be answered in whatever form.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Specs">What the library was asked.</param>
/// <param name="Units">The caller's units.</param>
/// <param name="Request">The request with every default shown, as JSON.</param>
/// <param name="Fingerprint">Fingerprint of request and engine.</param>
internal sealed record PlannedJob(FormPlan Plan, FormSpecs Specs, UnitSystem Units, RawJson Request, string Fingerprint)
{
    /// <summary>Plans a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public static Outcome Of(JsonBody<FormRequest> body, CancellationToken cancellation)
    {
        if (body.Problem is { } problem)
            return new(null, problem, body);
        var request = FormDefaults.Apply(body.Value);
        var specs = FormSpecs.From(request);
        try
        {
            var plan = FormPlan.Compute(specs.Panel, specs.Form, specs.Brake, specs.Marks, cancellation);
            var shown = RawJson.Of(request, WireJson.Requests.FormRequest);
            return new(new(plan, specs, UnitSystem.Of(request.Units), shown, Http.Fingerprint.Of(shown.Utf8)), null, body);
        }
        catch (NoSolutionException none)
        {
            return new(null, Unsolved.Of(none, body, UnitSystem.Of(body.Value.Units)), body);
        }
    }

    /// <summary>A planned job, or the problem in its way.</summary>
    /// <param name="job">The job, or null.</param>
    /// <param name="problem">The problem, or null.</param>
    /// <param name="body">The body as it was read.</param>
    internal readonly struct Outcome(PlannedJob? job, ProblemResult? problem, JsonBody<FormRequest> body)
    {
        /// <summary>The answer to the job, or its problem.</summary>
        /// <param name="answer">Answers the job; may still find that there is no answer of that form.</param>
        public IResult Answer(Func<PlannedJob, IResult> answer)
        {
            if (job is null)
                return problem!;
            try
            {
                return answer(job);
            }
            catch (NoSolutionException none)
            {
                return Unsolved.Of(none, body, UnitSystem.Of(body.Value.Units));
            }
        }
    }
}
