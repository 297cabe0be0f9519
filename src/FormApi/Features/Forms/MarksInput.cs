using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Layout;

namespace FormApi.Features.Forms;

/// <summary>How the flat form blank is marked.</summary>
/// <param name="Datum">Where marks are measured from: <c>edge</c> is the lead-in edge, <c>centre</c> gives signed values. Default:
/// <c>edge</c>.</param>
/// <param name="Tape">What the tape is divided in. Default: the request's units.</param>
/// <param name="Resolution">Smallest step of the tape, in the tape's own unit: 0.015625 is 1/64 in. Default: 0.5 on a mm tape, 0.015625 on
/// an inch tape.</param>
internal sealed record MarksInput(Datum? Datum = null, LengthUnit? Tape = null, double? Resolution = null);

/// <summary>What marks must satisfy.</summary>
internal sealed class MarksInputRules : AbstractValidator<MarksInput>
{
    /// <summary>The rules.</summary>
    /// <param name="units">The caller's units, which are the tape's unless it names its own.</param>
    public MarksInputRules(UnitSystem units)
    {
        RuleFor(marks => marks.Resolution).Within(Ranges.MmResolution, units)
            .When(marks => (marks.Tape ?? units.Unit) == LengthUnit.Mm);
        RuleFor(marks => marks.Resolution).Within(Ranges.InchResolution, units)
            .When(marks => (marks.Tape ?? units.Unit) == LengthUnit.In);
    }
}
