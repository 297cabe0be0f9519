using Forming.Curves;
using Forming.Folds;
using Forming.Tapers;

namespace Forming.Tests.Tapers;

/// <summary>
/// A right cone against its closed forms: slant length l = √(h² + (r2 - r1)²), flat sector = 360° (r2 - r1)/l, faceted-cone dihedral
/// cos d = sin²p + cos²p cos a. Its flat sector is a check of the engine.
/// </summary>
public class RightConeTests
{
    [Theory]
    [InlineData(60, 120, 400, 0.8, 8)]
    [InlineData(90, 40, 250, 0.7, 12)]
    [InlineData(200, 260, 900, 0.6, 20)]
    public void Folds_have_the_dihedral_of_a_faceted_cone(double near, double far, double height, double factor, int steps)
    {
        const double thickness = 1.2;
        var fold = new FoldShape(2, 2, 0.325);
        var formed = FormedPanel.Solve(RuledPanel.Of(TaperJobs.Cone(near, far, height), Surface.Inside, thickness), _ => 1 / factor);
        var turns = Enumerable.Range(0, steps + 1).Select(j => formed.Panel.Sweep * j / steps).ToArray();
        var folds = TaperFolds.Through(formed, turns, formed.Panel.Sweep, fold, thickness);

        // tan p_i = tan p/g, sweep Φ sin p/sin p_i about the axis; facet slope tan p' = tan p_i cos(a/2).
        var p = Math.Atan((far - near) / height);
        var pi = Math.Atan(Math.Tan(p) * factor);
        var sweep = Math.PI / 2 * Math.Sin(p) / Math.Sin(pi);
        var a = sweep / steps;
        var facet = Math.Atan(Math.Tan(pi) * Math.Cos(a / 2));
        var inner = 2 * Math.Asin(Math.Cos(facet) * Math.Sin(a / 2));
        var end = Math.Acos((Math.Sin(pi) * Math.Sin(facet)) + (Math.Cos(pi) * Math.Cos(facet) * Math.Cos(a / 2)));
        var between = 2 * Math.Asin(Math.Abs(Math.Sin(pi)) * Math.Sin(a / 2));

        Assert.All(folds.Angles[1..^1], angle => Assert.Equal(inner, angle, 9));
        Assert.Equal(end, folds.Angles[0], 7);
        Assert.Equal(end, folds.Angles[^1], 7);
        Assert.Equal(between, folds.LargestLineAngle.Radians, 7);
    }

    [Fact]
    public void The_panel_outline_is_as_near_the_cone_s_sector_as_chords_can_be()
    {
        var plan = TaperJobs.Plan(TaperJobs.Cone(60, 120, 400));
        var slant = Math.Sqrt((60 * 60) + (400 * 400));
        var sine = 60 / slant;

        // The mid surface lies half the thickness outside the measured face, square to the sheet.
        var inner = (60 + (0.6 * Math.Sqrt(1 - (sine * sine)))) / sine;
        var near = inner - (0.6 * Math.Sqrt(1 - (sine * sine)) / sine) + (0.6 / Math.Tan(Math.Asin(sine)));
        Assert.Equal(inner, near, 9);
        var sector = Math.PI / 2 * sine;
        var curved = sector / 2 * (((inner + slant) * (inner + slant)) - (inner * inner));
        var leads = (80 + 150) * slant;
        Assert.Equal(1, plan.Panel.Blank.AreaMm2 / (curved + leads), 6);
    }
}
