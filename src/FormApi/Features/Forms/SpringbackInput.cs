using System.Text.Json.Serialization;
using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.Forms;

/// <summary>How springback is found: by a model, with or without a measured yield, or by a measured factor.</summary>
/// <param name="Model">The model: <c>wrap</c> solves folds and facets on the simulated pull, so that the panel comes off as wanted;
/// <c>pure-bending</c> is quick, for prices, and comes off a few percent tighter. Default: <c>wrap</c>.</param>
/// <param name="Factor">Measured: finished curvature over formed curvature; pure geometry, no pull is simulated.</param>
/// <param name="EffectiveYield">Measured: the yield stress with which test strips agree [MPa or psi], for the model in use.</param>
internal sealed record SpringbackInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] SpringbackModel? Model = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Factor = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? EffectiveYield = null);

/// <summary>Models of springback.</summary>
internal enum SpringbackModel
{
    /// <summary>Solved on the simulated pull over the form itself.</summary>
    Wrap,

    /// <summary>Pure bending of the panel's sheet.</summary>
    PureBending,
}

/// <summary>What a choice of springback must satisfy.</summary>
internal sealed class SpringbackInputRules : AbstractValidator<SpringbackInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SpringbackInputRules(UnitSystem units)
    {
        RuleFor(springback => springback.Factor).Within(Ranges.SpringbackFactor, units);
        RuleFor(springback => springback.EffectiveYield).Within(Ranges.Strength, units);
        RuleFor(springback => springback.Factor).Null()
            .Else("choose-one", "Springback is found by a model or by a measured factor.", "model and effectiveYield, or factor")
            .When(springback => springback.Model is not null || springback.EffectiveYield is not null);
    }
}
