using Forming.Folds;

namespace Forming.Tapers;

/// <summary>Folds a flat tapered form back in space, from the lead-in on, each fold an arc of the neutral line.</summary>
internal static class Refold
{
    /// <summary>Largest miss of a refolded axis end from the plan's fold lines.</summary>
    /// <param name="flat">The flat form.</param>
    /// <param name="folds">The folds it was laid out from.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <returns>The miss [mm].</returns>
    public static double MissMm(FlatForm flat, TaperFolds folds, FoldShape fold)
    {
        // A facet lies a neutral radius outside its fold axes; only its plane's attitude and one point are carried along.
        var neutral = fold.NeutralRadiusMm;
        var outwards = folds.Planes[0].Normal;
        var line = (folds.Far[0] - folds.Near[0]).Unit();
        var first = flat.Folds[0];
        var facet = Facet.Laid(first.FirstNear, first.FirstFar, folds.Near[0] + (neutral * outwards), line, outwards);
        var largest = 0.0;
        for (var j = 0; j < flat.Folds.Length; j++)
        {
            var strip = flat.Folds[j];
            var near = facet.Place(strip.FirstNear) - (neutral * facet.Outwards);
            var far = facet.Place(strip.FirstFar) - (neutral * facet.Outwards);
            largest = Math.Max(largest, Math.Max((near - folds.Near[j]).Length, (far - folds.Far[j]).Length));

            // The strip's width, square to its sides, is the neutral arc.
            var axis = (far - near).Unit();
            var side = strip.FirstFar - strip.FirstNear;
            var angle = Math.Abs(side.Cross(strip.SecondNear - strip.FirstNear)) / side.Length / neutral;
            var (sin, cos) = Math.SinCos(angle);
            var turned = (cos * facet.Outwards) + (sin * axis.Cross(facet.Outwards));
            facet = Facet.Laid(strip.SecondNear, strip.SecondFar, near + (neutral * turned), axis, turned);
        }

        return largest;
    }

    private readonly record struct Facet(Point FlatOrigin, Point FlatLine, Point3 Origin, Point3 Line, Point3 Outwards)
    {
        public static Facet Laid(Point near, Point far, Point3 origin, Point3 line, Point3 outwards) =>
            new(near, 1 / (far - near).Length * (far - near), origin, line, outwards);

        public Point3 Place(Point point)
        {
            var from = point - FlatOrigin;
            return Origin + (from.Dot(FlatLine) * Line) + (from.Dot(-1 * FlatLine.Left()) * Line.Cross(Outwards));
        }
    }
}
