using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.Forms;

/// <summary>One fold of a form that already exists, named as a form's answer names it.</summary>
/// <param name="Angle">Fold angle as it is now [°].</param>
/// <param name="FacetAfter">Facet after this fold on the contact side, mold line to mold line [mm or in]; after the last the lead-out, as
/// <c>form.leadOut</c> has it; on a taper half-way along the folds.</param>
internal sealed record StandingStationInput(double Angle, double FacetAfter);

/// <summary>What a fold of a standing form must satisfy.</summary>
internal sealed class StandingStationInputRules : AbstractValidator<StandingStationInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public StandingStationInputRules(UnitSystem units)
    {
        RuleFor(station => station.Angle).Within(Ranges.StandingAngle, units);
        RuleFor(station => station.FacetAfter).Within(Ranges.StandingFacet, units);
    }
}
