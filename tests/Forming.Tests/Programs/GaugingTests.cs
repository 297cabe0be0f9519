using CsCheck;
using Forming.Programs;
using Forming.Programs.Brakes;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;

namespace Forming.Tests.Programs;

/// <summary>Gauge distances, measured again on the solid part as it lies.</summary>
public class GaugingTests
{
    [Fact]
    public void Gauge_distances_are_those_of_the_partly_folded_part()
    {
        var (flat, folded) = (0, 0);
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            Gen.Select(Parts.Uneven(3, 8, 5, 60), Gen.ULong, Gen.Bool).ForAll(
                (part, bits, isEnd) =>
                {
                    var fold = (int)(bits % (ulong)part.Folds);
                    var made = new FoldSet((bits >> 8) & ((1UL << part.Folds) - 1)).Without(fold);
                    var edge = isEnd ? PartEdge.End : PartEdge.Start;
                    var gauge = new FoldTrial(brake.ToolsFor(part), brake, new(default), made, fold, edge).Gauge;
                    var isPress = brake is PressBrake;
                    int[] others = [.. Enumerable.Range(0, part.Folds).Where(made.Has)];
                    var solid = SolidPart.Behind(part, others.ToHashSet(), fold, edge, isPress);

                    // The stop's face: from the underside of the flat sheet to its own height.
                    var face = SolidPart.Block(-2000, 2000, -part.Shape.ThicknessMm, brake.StopHeightMm);
                    var reached = solid.Select(piece => OverlayNGRobust.Overlay(piece, face, SpatialFunction.Intersection).EnvelopeInternal).Where(envelope => !envelope.IsNull).Min(envelope => envelope.MinX);
                    var line = isPress ? 0 : part.Shape.RadiusMm;
                    Workshop.Within(0.01, line - reached, gauge.DistanceMm);
                    var isFlat = others.All(other => (other > fold) == isEnd);
                    Assert.Equal(gauge.DistanceMm >= brake.GaugeMinMm && gauge.DistanceMm <= brake.GaugeMaxMm, gauge.IsInRange);
                    Assert.Equal(!gauge.IsInRange ? GaugedBy.Mark : isFlat ? GaugedBy.Flat : GaugedBy.FoldedPart, gauge.By);
                    Interlocked.Increment(ref isFlat ? ref flat : ref folded);
                },
                iter: 150);
        }

        Assert.True(flat > 10 && folded > 10, $"{flat} flat, {folded} folded");
    }

    // 60 to the first fold's tangent line, a fold of 30° (BA = 30° (2 + 0.4·2) = 1.466), 40 to the second: from the sight line 2 mm further.
    [Fact]
    public void A_flat_edge_is_gauged_from_the_sight_line_or_the_punch_tip()
    {
        var angle = 30 * Workshop.Degree;
        var part = Parts.Even(90, 90, 3) with { StraightsMm = [60, 40, 60], FoldAngles = [angle, angle], StopAngles = [angle, angle] };
        var leaf = new FoldTrial(Parts.Leaf.ToolsFor(part), Parts.Leaf, new(default), default, 1, PartEdge.End);
        Workshop.Within(1e-3, 60 + 1.466 + 40 + 2, leaf.Gauge.DistanceMm);
        var press = new FoldTrial(Parts.Press.ToolsFor(part), Parts.Press, new(default), default, 1, PartEdge.End);
        Workshop.Within(1e-3, 60 + 1.466 + 40 + 0.733, press.Gauge.DistanceMm);
        Assert.Equal(90, press.Gauge.FaceSlope.Degrees, 9);
    }
}
