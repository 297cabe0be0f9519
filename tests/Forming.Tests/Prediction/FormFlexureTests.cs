using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Tests.Prediction;

/// <summary>A bare form that bends under the pull, worked out together with the panel.</summary>
public class FormFlexureTests
{
    private static readonly Material Like5052 = Workshop.Swift(70000, 0.33, 193, 0.08, 0.004);
    private static readonly Material CabCorner = Workshop.Swift(70300, 0.33, 193, 0.06154847995, 0.00154847995);
    private static readonly Material Stainless = Workshop.Hardening(193000, 0.28, 290, 0.45, 1275);

    /// <remarks>
    /// Finite elements with both sheets meshed (CalculiX 2.20), and for the forms of 1.5 and 3 mm a beam coupled into the strip elsewhere;
    /// the tolerance of that table is 8 %. Computed, not measured.
    /// </remarks>
    [Theory]
    [InlineData("5052-like", 2, 1.25)]
    [InlineData("5052-like", 1.5, 2.63)]
    [InlineData("5052-like", 3, 0.38)]
    [InlineData("cab corner", 2, 3.90)]
    [InlineData("304", 2, 1.05)]
    public void Its_end_turns_as_far_as_finite_elements_say(string sheet, double form, double degrees)
    {
        var (material, thickness, lever, facets, angles) = sheet switch
        {
            "304" => (Stainless, 1.2, 150, Ends(20.52671052, 20.827732778, 5), Ends(8.512945468, 17.025890936, 6)),
            "cab corner" => (CabCorner, 1.6, 69.833711496, Ends(17.196350712, 17.487122379, 8), Ends(8.230026989, 16.460053977, 9)),
            _ => (Like5052, 1.6, 150, Ends(20, 20, 5), [7.5, 15, 15, 15, 15, 15]),
        };
        var law = BendingLaw.Of(new(material, thickness));
        var standing = new StandingForm(facets, [.. angles.Select(angle => angle * Workshop.Degree)], 4);
        var beam = new FormBeam(205000 / (1 - (0.29 * 0.29)) * form * form * form / 12, form, FirstYieldPerWidth: 1000);
        var bare = PanelWrap.Compute(standing, law, new(lever, 0, beam));
        var rigid = PanelWrap.Compute(standing, law, new(lever));
        Assert.Equal(WrapEnd.Complete, bare.End);
        Workshop.Near(degrees, bare.Form.Turn.Degrees, 0.08);
        Assert.Equal(0, rigid.Form.Turn.Degrees);
        Assert.True(bare.MeanCurvature > rigid.MeanCurvature, "over a form that closes the panel comes off tighter");
    }

    // Clamped 30 mm back, the first fold is pushed up by about 1.5 M/d and tilts the form by 0.75 M d/(E'I): 1.28°; finite elements say
    // 1.45° more than with the clamp right at the fold. One case, computed.
    [Fact]
    public void A_clamp_further_back_lets_the_whole_form_tilt()
    {
        var law = BendingLaw.Of(new(Like5052, 1.6));
        var form = new StandingForm(Ends(20, 20, 5), [.. new[] { 7.5, 15, 15, 15, 15, 15 }.Select(angle => angle * Workshop.Degree)], 4);
        var beam = new FormBeam(205000 / (1 - (0.29 * 0.29)) * 8 / 12, 2, FirstYieldPerWidth: 1000);
        var (near, far) = (PanelWrap.Compute(form, law, new(150, 0, beam)), PanelWrap.Compute(form, law, new(150, 30, beam)));
        var tilt = far.Form.Turn.Degrees - near.Form.Turn.Degrees;
        Workshop.Near(1.45, tilt, 0.08);
        Workshop.Near(0.75 * law.At(1 / 78.0).MomentPerWidth * 30 / beam.StiffnessPerWidth / Workshop.Degree, tilt, 0.15);
        Assert.Equal(0, near.Form.ClampTurn.Degrees);
        Workshop.Near(tilt, far.Form.ClampTurn.Degrees, 0.05);
        Assert.True(far.Form.MomentPerWidth > 2 * near.Form.MomentPerWidth, "the push at the first fold bends the form most at the clamp");
    }

    private static double[] Ends(double end, double inner, int count) => [end, .. Enumerable.Repeat(inner, count - 2), end];
}
