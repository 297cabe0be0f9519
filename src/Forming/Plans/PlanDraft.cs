using Forming.Curves;
using Forming.Facets;
using Forming.Layout;
using Forming.Panels;
using Forming.Springback;

namespace Forming.Plans;

/// <summary>Everything a plan has worked out, for its checks and notes to look at.</summary>
internal sealed record PlanDraft
{
    public required PanelSpec Panel { get; init; }

    public required FormSpec Form { get; init; }

    public required BrakeSpec Brake { get; init; }

    public required MarkSpec Marks { get; init; }

    public required FinishedCurve Finished { get; init; }

    public required WrappedForm Wrapped { get; init; }

    public required BendingLaw FormLaw { get; init; }

    public required FoldShape Fold { get; init; }

    public required FlatLayout Layout { get; init; }

    public required double FoldBackMissMm { get; init; }

    public required Section Section { get; init; }

    public required SteppingReport Stepping { get; init; }

    public required IReadOnlyList<Station> Stations { get; init; }

    public required PrintThroughResult PrintThrough { get; init; }

    public required Blank FormBlank { get; init; }

    public required Blank PanelBlank { get; init; }

    public required IReadOnlyList<PanelMark> PanelMarks { get; init; }

    public required Pull Pull { get; init; }

    public required FormGive Give { get; init; }

    public BendingLaw PanelLaw => Wrapped.Rule.Law;

    public FormPolygon Polygon => Wrapped.Folds.Polygon;

    public double OuterStrain => Panel.Sheet.ThicknessMm / 2 * Wrapped.Tightest.Curvature;
}
