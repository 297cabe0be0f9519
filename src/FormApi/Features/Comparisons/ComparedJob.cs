using System.Text;
using System.Text.Json.Nodes;
using FormApi.Features.Estimates;
using FormApi.Features.Forms;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming.Checks;
using Forming.Estimates;
using Forming.Plans;

namespace FormApi.Features.Comparisons;

/// <summary>One combination of a comparison: put together, planned, priced, and reduced to a row.</summary>
/// <param name="comparison">The comparison.</param>
/// <param name="instance">Path of the comparison.</param>
/// <param name="traceId">Trace id of the comparison.</param>
internal sealed class ComparedJob(ComparisonRequest comparison, string instance, string traceId)
{
    private readonly string _request = comparison.Request.GetRawText();

    /// <summary>The row of a combination.</summary>
    /// <param name="row">Its number, from 1.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public ComparedRow RowOf(int row, CancellationToken cancellation)
    {
        var values = ValuesOf(row - 1);
        var utf8 = Encoding.UTF8.GetBytes(With(values));
        var answer = comparison.Operation == ComparedOperation.Estimate
            ? JsonBody<EstimateRequest>.Of(utf8).Answer(given => Priced(given, row, values, cancellation))
            : JsonBody<FormRequest>.Of(utf8).Answer(given => Priced(AsEstimate(given), row, values, cancellation));
        return answer.Result is RowResult computed ? computed.Row : Refused((ProblemResult)answer.Result, row, values);
    }

    /// <summary>The row of a combination that took too long.</summary>
    /// <param name="row">Its number, from 1.</param>
    /// <param name="problem">Why it is none.</param>
    public ComparedRow Refused(int row, ProblemResult problem) => Refused(problem, row, ValuesOf(row - 1));

    private ComparedRow Refused(ProblemResult problem, int row, AnyValue[] values) =>
        new(row, values, Problem: problem.ToProblem(instance, traceId));

    // The last list changes fastest.
    private AnyValue[] ValuesOf(int number)
    {
        var values = new AnyValue[comparison.Vary.Count];
        for (var i = values.Length - 1; i >= 0; i--)
        {
            var choices = comparison.Vary[i].Values;
            values[i] = choices[number % choices.Count];
            number /= choices.Count;
        }

        return values;
    }

    private string With(AnyValue[] values)
    {
        var document = JsonNode.Parse(_request)!;
        for (var i = 0; i < values.Length; i++)
            JsonPlace.Set(document, comparison.Vary[i].Pointer, values[i].Json);
        return document.ToJsonString();
    }

    private static EstimateRequest AsEstimate(FormRequest form) => new(form.Units, form.Panel, form.Form, form.Brake, form.Marks);

    private static RowResult Priced(EstimateRequest given, int row, AnyValue[] values, CancellationToken cancellation)
    {
        var request = EstimateDefaults.Apply(given);
        var specs = FormSpecs.From(request.AsForm());
        var plan = FormPlan.Compute(specs.Job, _ => false, cancellation);
        var estimate = Estimate.Of(EstimateSpecs.From(request, specs, plan));
        return new(RowOf(plan, estimate, specs, row, values, UnitSystem.Of(request.Units)));
    }

    private static ComparedRow RowOf(FormPlan plan, Estimate estimate, FormSpecs specs, int row, AnyValue[] values, UnitSystem units)
    {
        var (panel, prediction) = (plan.Panel, plan.Panel.Prediction);
        return new(
            row,
            values,
            plan.Verdict,
            [.. plan.Checks.Where(check => check.Verdict != Verdict.Pass).Select(check => check.Id)],
            plan.Form.Stations.Count,
            plan.Form.StopSettings.Count,
            plan.Taper is null ? UnitSystem.Degrees(prediction?.Shape?.Sweep) : null,
            OutlookBandResult.OfLength(panel.Outlook.RadiusMm, units),
            units.Length(prediction is null ? panel.PrintThrough.RippleMm : prediction.Ripple.HeightMm),
            units.Force(panel.Pull.ForceN),
            new(units.Length(panel.Blank.LengthMm), units.Length(panel.Blank.WidthMm)),
            new(units.Length(plan.Form.Blank.LengthMm), units.Length(plan.Form.Blank.WidthMm)),
            units.Length(specs.Form.Sheet.ThicknessMm),
            WireNumber.Of(estimate.FormMinutes.Likely),
            WireNumber.Of(estimate.Prices[0].Price.Likely));
    }

    private sealed class RowResult(ComparedRow row) : IResult
    {
        public ComparedRow Row => row;

        public Task ExecuteAsync(HttpContext httpContext) => throw new NotSupportedException("A row is part of an answer.");
    }
}
