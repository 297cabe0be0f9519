using System.Linq.Expressions;
using FluentValidation;
using FormApi.Features.Forms;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Jobs;

namespace FormApi.Features.Programs;

/// <summary>The brake that folds the form, with its tools.</summary>
/// <param name="Length">Longest fold it takes [mm or in]. Default: the form's longest fold.</param>
/// <param name="Kind">Kind of brake. Default: <c>leaf</c>.</param>
/// <param name="MinFacet">Narrowest facet it can fold [mm or in]. Default: 8 mm.</param>
/// <param name="StopResolution">Smallest step of its angle stop [°]. Default: 0.5°.</param>
/// <param name="Reach">From the nose to where the leaf bears [mm or in]. Default: null, half the die opening where there is one, else 12
/// mm.</param>
/// <param name="DieOpening">Opening of the die [mm or in]; press brakes only. Default: null, 6 to 12 thicknesses of the sheet as
/// <c>basis</c> says.</param>
/// <param name="Capacity">What the brake is rated for. Default: null, nothing is checked.</param>
/// <param name="Tools">Its tools, gauge and limits. Default: generic ones, every one an assumption; nothing was measured on a
/// brake.</param>
/// <param name="Assumed">Which values nobody gave. Default: those that are left out.</param>
internal sealed record ProgramBrakeInput(
    double? Length = null,
    BrakeKind? Kind = null,
    double? MinFacet = null,
    double? StopResolution = null,
    double? Reach = null,
    double? DieOpening = null,
    CapacityInput? Capacity = null,
    ToolsInput? Tools = null,
    IReadOnlyList<BrakeFigure>? Assumed = null)
{
    /// <summary>The brake as a form request has it.</summary>
    public BrakeInput AsBrake() => new(Length, Kind, MinFacet, StopResolution, Reach, DieOpening, Capacity, Assumed);
}

/// <summary>What such a brake must satisfy.</summary>
internal sealed class ProgramBrakeInputRules : AbstractValidator<ProgramBrakeInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ProgramBrakeInputRules(UnitSystem units)
    {
        RuleFor(brake => brake.AsBrake()).SetValidator(new BrakeInputRules(units));
        RuleFor(brake => brake.Tools!).SetValidator(new ToolsInputRules(units)).When(brake => brake.Tools is not null);
        When(brake => brake is { Tools: not null, Kind: BrakeKind.Press }, () =>
        {
            OnlyOfLeaf(brake => brake.Tools!.Beam);
            OnlyOfLeaf(brake => brake.Tools!.MinRun);
            OnlyOfLeaf(brake => brake.Tools!.MinLand);
            OnlyOfLeaf(brake => brake.Tools!.Lever);
            OnlyOfLeaf(brake => brake.Tools!.Bearing);
            OnlyOfLeaf(brake => brake.Tools!.BeamDepth);
        });
        When(brake => brake is { Tools: not null, Kind: not BrakeKind.Press }, () =>
        {
            OnlyOfPress(brake => brake.Tools!.Punch);
            OnlyOfPress(brake => brake.Tools!.Holder);
            OnlyOfPress(brake => brake.Tools!.Ram);
            OnlyOfPress(brake => brake.Tools!.Die);
            OnlyOfPress(brake => brake.Tools!.Bed);
            OnlyOfPress(brake => brake.Tools!.ForceCapacity);
        });
    }

    private void OnlyOfLeaf<TField>(Expression<Func<ProgramBrakeInput, TField>> field) =>
        RuleFor(field).Null().Else("not-applicable", "It belongs to a leaf brake.", "only with kind leaf");

    private void OnlyOfPress<TField>(Expression<Func<ProgramBrakeInput, TField>> field) =>
        RuleFor(field).Null().Else("not-applicable", "It belongs to a press brake.", "only with kind press");
}
