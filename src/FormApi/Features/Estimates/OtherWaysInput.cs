using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.Estimates;

/// <summary>Bumping the panel itself in a press brake; angle or pitch, whichever gives fewer hits.</summary>
/// <param name="Angle">Turn of a hit [°]. Default: 2; null where only <c>pitch</c> is given.</param>
/// <param name="Pitch">From hit to hit, half the die opening [mm or in]. Default: 1/8 in, at least 2.5 thicknesses; null where only
/// <c>angle</c> is given.</param>
/// <param name="SetUp">Punch, die and gauge, once [min]. Default: 30.</param>
/// <param name="Hit">Each hit and person [min]. Default: 0.25.</param>
/// <param name="Correcting">Checking a bend and hitting it again [min]. Default: 5.</param>
/// <param name="Hour">An hour of the brake and who works it [currency/h]. Default: <c>rates.labour</c>.</param>
internal sealed record BumpingInput(
    double? Angle = null,
    double? Pitch = null,
    double? SetUp = null,
    double? Hit = null,
    double? Correcting = null,
    double? Hour = null);

/// <summary>Rolling the same blanks in this shop.</summary>
/// <param name="SetUp">Setting up the rolls, once [min].</param>
/// <param name="PerPanel">Rolling the first panel [min].</param>
/// <param name="Hour">An hour of the rolls and who works them [currency/h].</param>
internal sealed record RollingInput(double SetUp, double PerPanel, double Hour);

/// <summary>Another way to make the same panels.</summary>
/// <param name="FixedCost">What it costs once, whatever the count [currency].</param>
/// <param name="CostPerPiece">What it costs for each panel, sheet included [currency].</param>
/// <param name="MinutesPerPiece">Minutes of own labour for each panel beside that, at <c>rates.labour</c> and <c>rates.overhead</c>.
/// Default: 0.</param>
/// <param name="Name">Its name. Default: <c>other method</c>.</param>
internal sealed record OtherMethodInput(double FixedCost, double CostPerPiece, double? MinutesPerPiece = null, string? Name = null);

/// <summary>What bumping must satisfy.</summary>
internal sealed class BumpingInputRules : AbstractValidator<BumpingInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public BumpingInputRules(UnitSystem units)
    {
        RuleFor(bumping => bumping.Angle).Within(Ranges.HitAngle, units);
        RuleFor(bumping => bumping.Pitch).Within(Ranges.HitPitch, units);
        RuleFor(bumping => bumping.SetUp).Within(Ranges.WorkMinutes, units);
        RuleFor(bumping => bumping.Hit).Within(Ranges.WorkMinutes, units);
        RuleFor(bumping => bumping.Correcting).Within(Ranges.WorkMinutes, units);
        RuleFor(bumping => bumping.Hour).Within(Ranges.Money, units);
    }
}

/// <summary>What rolling must satisfy.</summary>
internal sealed class RollingInputRules : AbstractValidator<RollingInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public RollingInputRules(UnitSystem units)
    {
        RuleFor(rolling => rolling.SetUp).Within(Ranges.WorkMinutes, units);
        RuleFor(rolling => rolling.PerPanel).Within(Ranges.WorkMinutes, units);
        RuleFor(rolling => rolling.Hour).Within(Ranges.Money, units);
    }
}

/// <summary>What another method must satisfy.</summary>
internal sealed class OtherMethodInputRules : AbstractValidator<OtherMethodInput>
{
    private const int LongestName = 60;

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public OtherMethodInputRules(UnitSystem units)
    {
        RuleFor(other => other.FixedCost).Within(Ranges.Money, units);
        RuleFor(other => other.CostPerPiece).Within(Ranges.Money, units);
        RuleFor(other => other.MinutesPerPiece).Within(Ranges.WorkMinutes, units);
        RuleFor(other => other.Name).MaximumLength(LongestName).Else("too-long", "The name is too long.", $"at most {LongestName} characters");
    }
}
