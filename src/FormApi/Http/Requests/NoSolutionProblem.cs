using System.Text;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using FormApi.Http.Units;
using Forming.Results;

namespace FormApi.Http.Requests;

/// <summary>A calculation that found no answer, as a problem.</summary>
internal static class NoSolutionProblem
{
    /// <summary>The problem, in the caller's units, with what was given at its pointer.</summary>
    /// <typeparam name="T">Type of the body.</typeparam>
    /// <param name="none">Why there is no answer.</param>
    /// <param name="body">The body as it was read.</param>
    /// <param name="units">The caller's units.</param>
    public static ProblemResult Of<T>(NoSolutionException none, JsonBody<T> body, UnitSystem units)
        where T : class, IRequestBody<T>
    {
        var pointer = Wire.Pointer(none.Subject);
        var message = units.Wording.Of(none.Wording);
        var fault = new Fault(
            pointer,
            none.Code,
            message,
            body.GivenAt(pointer),
            units.Wording.OfOptional(none.Allowed),
            none.Remedy is { } remedy
                ? new(units.Wording.Of(remedy.Text), Lists.Map(remedy.Changes, change => ChangeOf(change, units)))
                : null);
        return new(ProblemKinds.NoSolution, message, [fault], none.Code);
    }

    private static ChangeResult ChangeOf(InputChange change, UnitSystem units) => new(
        Wire.Pointer(change.Subject),
        new(Encoding.UTF8.GetBytes(CanonicalJson.Number(units.Figure(change.Value, change.Quantity)))));
}
