using Forming.Results;

namespace Forming.Plans;

/// <summary>The whole job: from a finished curve and a material to a form, a panel blank, checks and cautions.</summary>
public sealed record FormPlan
{
    /// <summary>What the checks come to.</summary>
    public required PlanVerdict Verdict { get; init; }

    /// <summary>The form.</summary>
    public required PlannedForm Form { get; init; }

    /// <summary>The panel.</summary>
    public required PlannedPanel Panel { get; init; }

    /// <summary>Every check, passed or not.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>Cautions that this job calls for.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>Hints that save a panel.</summary>
    public required IReadOnlyList<ShopNote> ShopNotes { get; init; }

    /// <summary>What every headline figure rests on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }
}
