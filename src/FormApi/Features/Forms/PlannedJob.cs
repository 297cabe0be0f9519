using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming.Checks;
using Forming.Drawing;
using Forming.Plans;

namespace FormApi.Features.Forms;

/// <summary>A request that was planned, ready to be answered in whatever form.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Specs">What the library was asked.</param>
/// <param name="Shown">The request with every default shown.</param>
internal sealed record PlannedJob(FormPlan Plan, FormSpecs Specs, NormalizedRequest Shown)
{
    /// <summary>What the caller says of the job for its sheets, or null.</summary>
    public TitleBlock? Given { get; init; }

    /// <summary>The caller's units.</summary>
    public UnitSystem Units => Shown.Units;

    /// <summary>Plans a request.</summary>
    /// <param name="given">A request that passed its rules.</param>
    /// <param name="needsRemedy">Which of the checks that did not pass are given a remedy; null for all.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="Forming.Results.NoSolutionException">There is no such form.</exception>
    public static PlannedJob Of(FormRequest given, Func<Check, bool>? needsRemedy, CancellationToken cancellation)
    {
        var request = FormDefaults.Apply(given);
        var specs = FormSpecs.From(request);
        return new(FormPlan.Compute(specs.Job, needsRemedy, cancellation), specs, NormalizedRequest.Of(request))
        {
            Given = given.Sheet?.AsDrawn(),
        };
    }
}
