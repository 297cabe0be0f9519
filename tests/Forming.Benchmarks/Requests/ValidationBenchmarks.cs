using BenchmarkDotNet.Attributes;
using FluentValidation;
using FormApi.Features.Forms;
using FormApi.Http.Requests;

namespace Forming.Benchmarks.Requests;

/// <summary>Checking a request: the rules of the service, against the same number fields by FluentValidation's own range rule alone.</summary>
[MemoryDiagnoser]
[MinColumn]
public class ValidationBenchmarks
{
    private readonly PlainRules _plain = new();
    private readonly FormRequest _request = LoadRequest.Read;

    /// <summary>Ranges only, by the library's own rule.</summary>
    [Benchmark(Baseline = true)]
    public object Plain() => _plain.Validate(_request);

    /// <summary>All rules of the service: ranges in the caller's units, finite numbers, choices, materials.</summary>
    [Benchmark]
    public object Service() => ((IRequestBody<FormRequest>)_request).Check();

    private sealed class PlainRules : AbstractValidator<FormRequest>
    {
        public PlainRules()
        {
            RuleFor(request => request.Panel).SetValidator(new PlainPanelRules());
            RuleFor(request => request.Form!).SetValidator(new PlainFormRules());
            RuleFor(request => request.Brake!).SetValidator(new PlainBrakeRules());
        }
    }

    private sealed class PlainPanelRules : AbstractValidator<PanelInput>
    {
        public PlainPanelRules()
        {
            RuleFor(panel => panel.Thickness).InclusiveBetween(0.1, 25);
            RuleFor(panel => panel.Width).InclusiveBetween(1, 20000);
            RuleFor(panel => panel.LeadIn).InclusiveBetween(0, 20000);
            RuleFor(panel => panel.LeadOut).InclusiveBetween(0, 20000);
            RuleFor(panel => panel.Trim).InclusiveBetween(0, 20000);
            RuleFor(panel => panel.Lever).InclusiveBetween(0, 20000);
            RuleFor(panel => panel.AllowedRipple).InclusiveBetween(0, 10);
            RuleFor(panel => panel.AllowedSlope).InclusiveBetween(0, 45);
            RuleFor(panel => panel.Curve).SetInheritanceValidator(kinds => kinds.Add(new PlainArcRules()));
        }
    }

    private sealed class PlainArcRules : AbstractValidator<ArcInput>
    {
        public PlainArcRules()
        {
            RuleFor(arc => arc.Radius).InclusiveBetween(1, 100000);
            RuleFor(arc => arc.Sweep).InclusiveBetween(0, 360);
        }
    }

    private sealed class PlainFormRules : AbstractValidator<FormInput>
    {
        public PlainFormRules()
        {
            RuleFor(form => form.Thickness).InclusiveBetween(0.1, 25);
            RuleFor(form => form.FoldRadius).InclusiveBetween(0, 1000);
            RuleFor(form => form.LeadIn).InclusiveBetween(0, 20000);
            RuleFor(form => form.LeadOut).InclusiveBetween(0, 20000);
            RuleFor(form => form.Width).InclusiveBetween(1, 20000);
            RuleFor(form => form.NeutralFactor).InclusiveBetween(0, 1);
        }
    }

    private sealed class PlainBrakeRules : AbstractValidator<BrakeInput>
    {
        public PlainBrakeRules()
        {
            RuleFor(brake => brake.Length).InclusiveBetween(1, 20000);
            RuleFor(brake => brake.MinFacet).InclusiveBetween(0, 1000);
            RuleFor(brake => brake.StopResolution).InclusiveBetween(0, 45);
            RuleFor(brake => brake.Reach).InclusiveBetween(0, 1000);
            RuleFor(brake => brake.DieOpening).InclusiveBetween(0, 1000);
        }
    }
}
