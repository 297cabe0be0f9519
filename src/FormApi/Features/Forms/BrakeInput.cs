using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Jobs;

namespace FormApi.Features.Forms;

/// <summary>The brake the form is folded on.</summary>
/// <param name="Length">Longest fold it takes [mm or in]. Default: the form's longest fold.</param>
/// <param name="Kind">Kind of brake. Default: <c>leaf</c>.</param>
/// <param name="MinFacet">Narrowest facet it can fold [mm or in]. Default: 8 mm.</param>
/// <param name="StopResolution">Smallest step of its angle stop [°]. Default: 0.5°.</param>
/// <param name="Reach">From the nose to where the leaf bears [mm or in]. Default: null, half the die opening where there is one, else 12
/// mm.</param>
/// <param name="DieOpening">Opening of the die [mm or in]; press brakes only. Default: null.</param>
/// <param name="Capacity">What the brake is rated for. Default: null, nothing is checked.</param>
/// <param name="Assumed">Which values nobody gave. Default: those that are left out.</param>
internal sealed record BrakeInput(
    double? Length = null,
    BrakeKind? Kind = null,
    double? MinFacet = null,
    double? StopResolution = null,
    double? Reach = null,
    double? DieOpening = null,
    CapacityInput? Capacity = null,
    IReadOnlyList<BrakeFigure>? Assumed = null);

/// <summary>A value of the brake that may be left open.</summary>
internal enum BrakeFigure
{
    /// <summary>The length.</summary>
    Length,
}

/// <summary>The sheet that a brake is rated for over its full length.</summary>
/// <param name="Thickness">Rated thickness [mm or in].</param>
/// <param name="Ultimate">Ultimate strength of the sheet it is rated with [MPa or psi].</param>
internal sealed record CapacityInput(double Thickness, double Ultimate);

/// <summary>What a brake must satisfy.</summary>
internal sealed class BrakeInputRules : AbstractValidator<BrakeInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public BrakeInputRules(UnitSystem units)
    {
        RuleFor(brake => brake.Length).Within(Ranges.BrakeLength, units);
        RuleFor(brake => brake.MinFacet).Within(Ranges.Facet, units);
        RuleFor(brake => brake.StopResolution).Within(Ranges.StopResolution, units);
        RuleFor(brake => brake.Reach).Within(Ranges.Reach, units);
        RuleFor(brake => brake.DieOpening).Within(Ranges.DieOpening, units);
        RuleFor(brake => brake.Capacity!).SetValidator(new CapacityInputRules(units)).When(brake => brake.Capacity is not null);
        RuleFor(brake => brake.DieOpening).Null().Else("not-applicable", "A leaf brake has no die.", "only with kind press")
            .When(brake => brake.Kind is not BrakeKind.Press);
    }
}

/// <summary>What a brake's rating must satisfy.</summary>
internal sealed class CapacityInputRules : AbstractValidator<CapacityInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public CapacityInputRules(UnitSystem units)
    {
        RuleFor(capacity => capacity.Thickness).Within(Ranges.RatedThickness, units);
        RuleFor(capacity => capacity.Ultimate).Within(Ranges.Strength, units);
    }
}
