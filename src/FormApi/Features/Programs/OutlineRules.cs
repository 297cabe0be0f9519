using System.Globalization;
using System.Linq.Expressions;
using FluentValidation;
using FormApi.Http.Json;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Numerics;

namespace FormApi.Features.Programs;

/// <summary>What the outline of a tool must satisfy: a polygon that can be cut out of paper.</summary>
internal static class OutlineRules
{
    /// <summary>Adds the faults of an outline.</summary>
    /// <typeparam name="T">The record that holds it.</typeparam>
    /// <param name="context">The check; the rule must be on the record itself.</param>
    /// <param name="field">The outline's field.</param>
    /// <param name="outline">The outline, or null.</param>
    /// <param name="units">The caller's units.</param>
    /// <returns>Whether there is an outline without a fault.</returns>
    public static bool Check<T>(
        ValidationContext<T> context, Expression<Func<T, IReadOnlyList<Pair>?>> field, IReadOnlyList<Pair>? outline, UnitSystem units)
    {
        if (outline is null || outline.Count < Ranges.OutlineCount.Min || outline.Count > Ranges.OutlineCount.Max)
            return false;
        var isInRange = true;
        var (range, limit) = (Ranges.OutlineCoordinate.Text(units), Ranges.OutlineCoordinate.MaxIn(units));
        for (var i = 0; i < outline.Count; i++)
        {
            CheckCoordinate(outline[i].First, At(i) + "[0]");
            CheckCoordinate(outline[i].Second, At(i) + "[1]");
        }

        return isInRange && IsSimple();

        string At(int corner) => string.Create(CultureInfo.InvariantCulture, $"[{corner}]");

        void CheckCoordinate(double coordinate, string at)
        {
            if (!double.IsFinite(coordinate))
                context.FaultAt(field, "not-finite", FiniteRule.Message, range, at);
            else if (Math.Abs(coordinate) > limit)
                context.FaultAt(field, "out-of-range", "The value is outside its range.", range, at);
            else
                return;
            isInRange = false;
        }

        bool IsSimple()
        {
            Point[] corners = [.. outline.Select(corner => new Point(corner.First, corner.Second))];
            if (SimplePolygon.FirstRepeated(corners) is { } repeated)
            {
                context.FaultAt(field, "outline.repeated-corner", "The corner repeats the one before it; an outline closes without it.", "each corner once", At(repeated));
                return false;
            }

            if (SimplePolygon.FirstCrossing(corners) is not { } crossing)
                return true;
            context.FaultAt(
                field,
                "outline.crosses-itself",
                string.Create(CultureInfo.InvariantCulture, $"The edge from corner {crossing.Second} meets the edge from corner {crossing.First}; corners are counted from 0."),
                "corners in order round the tool, so that no two edges meet but at the corner they share",
                At(crossing.Second));
            return false;
        }
    }
}
