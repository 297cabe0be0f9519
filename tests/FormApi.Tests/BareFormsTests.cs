using System.Globalization;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Forms that stand bare close under the pull, and the panel comes off tighter; through the real pipeline.</summary>
/// <remarks>
/// Finite elements with both sheets meshed (CalculiX 2.20): form 2 mm, 205,000 MPa, 0.29, elastic, clamped with the panel at the first
/// tangent point; outer fold radius 4 mm; frictionless; panel with K (eps0 + ep)^n, Y = K eps0^n. Status: computed. The rotation is that
/// of the end with the panel's mid line on the lead-out; radius of the mid surface over the middle folds. Their tolerances: rotation 8 %,
/// force 2 %, radius 1.5 %. The strip reads these radii 1.1 to 1.9 % too large and the sweeps 0.7 to 1.8 % too small over a rigid form and
/// a bare one alike, for gently bent sheet begins to yield sooner than plane strain says; so that tolerance is held for what the form's
/// give changes.
/// </remarks>
public sealed class BareFormsTests(Service service) : IClassFixture<Service>
{
    private static readonly Case[] Cases =
    [
        new(
            "5052-like", 70000, 0.33, 193, 0.08, 193 / Math.Pow(0.004, 0.08), 1.6, 150, Ends(20, 20, 5), [7.5, 15, 15, 15, 15, 15],
            1.25, 0.9985, (122.8, 120.7), (51.76, 52.08)),
        new(
            "cab corner", 70300, 0.33, 193, 0.06154847995, 193 / Math.Pow(0.00154847995, 0.06154847995), 1.6, 69.833711496,
            Ends(17.196350712, 17.487122379, 8), Ends(8.230026989, 16.460053977, 9), 3.90, 2.105, (87.3, 83.5), (88.51, 90.29)),
        new(
            "304", 193000, 0.28, 290, 0.45, 1275, 1.2, 150, Ends(20.52671052, 20.827732778, 5), Ends(8.512945468, 17.025890936, 6),
            1.05, 0.787, null, null),
    ];

    public static TheoryData<string> Names => [.. Cases.Select(one => one.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_bare_form_closes_and_its_panel_comes_off_tighter_as_finite_elements_say(string name)
    {
        var one = Cases.Single(one => one.Name == name);
        var (bare, rigid) = (await service.Prediction(one.Request("none")), await service.Prediction(one.Request("ribs")));

        Near(one.Rotation, bare["give"]!["rotation"]!, 0.08);
        Assert.Equal(0, (double)bare["give"]!["clampShare"]!);
        Assert.InRange((double)bare["give"]!["shareOfYield"]!, 0.1, 1);
        Assert.Null(rigid["give"]);
        Near(one.Force * 300, bare["pull"]!["force"]!, 0.02);
        Assert.True((double)bare["radius"]! < (double)rigid["radius"]!);
        Assert.True((double)bare["sweep"]! > (double)rigid["sweep"]!);
        if (one.Radius is not { } radius || one.Sweep is not { } sweep)
            return;
        Near(radius.Bare / radius.Rigid, (double)bare["radius"]! / (double)rigid["radius"]!, 0.015);
        Assert.InRange((double)bare["sweep"]! - (double)rigid["sweep"]!, sweep.Bare - sweep.Rigid - 0.25, sweep.Bare - sweep.Rigid + 0.25);
        foreach (var (expected, got) in new[] { (radius.Rigid, rigid["radius"]!), (radius.Bare, bare["radius"]!), (sweep.Rigid, rigid["sweep"]!), (sweep.Bare, bare["sweep"]!) })
            Near(expected, got, 0.02);
    }

    [Fact]
    public async Task A_form_that_stands_is_bare_and_as_wide_as_the_panel_unless_it_is_said()
    {
        var shown = (await service.Prediction(Requests.Standing()))["request"]!["form"]!;
        Assert.Equal(("none", 600.0), ((string?)shown["backing"], (double)shown["width"]!));

        var plain = await service.Prediction(Requests.Standing());
        var wide = await service.Prediction(Requests.Standing().With("/form/width", "1200"));
        Assert.InRange((double)wide["give"]!["rotation"]! / (double)plain["give"]!["rotation"]!, 0.4, 0.6);
    }

    // 1.27° more by 0.75 M d/(E'I), 1.45° by finite elements, in one case.
    [Fact]
    public async Task A_clamp_30_mm_back_lets_the_form_tilt_and_says_how_much_of_the_give_that_is()
    {
        var request = Cases[0].Request("none");
        var near = await service.Prediction(request);
        var far = await service.Prediction(request.With("/panel/clamp", """{"gap":30}"""));
        Assert.Equal((0.0, 30.0), ((double)near["clampGap"]!, (double)far["clampGap"]!));
        var tilt = (double)far["give"]!["rotation"]! - (double)near["give"]!["rotation"]!;
        Assert.InRange(tilt, 1.45 * 0.92, 1.45 * 1.08);
        Assert.InRange((double)far["give"]!["clampShare"]!, 0.5, 0.6);
    }

    [Fact]
    public async Task A_thin_form_that_stands_bare_is_not_to_be_pulled_on_until_ribs_back_it()
    {
        var thin = Requests.Standing().With("/form/thickness", "0.8");
        var check = (await service.Prediction(thin))["checks"]!.AsArray().Single(check => (string?)check!["id"] == "form-yield")!;
        Assert.Equal("fail", (string?)check["verdict"]);
        var change = Assert.Single(check["remedy"]!["changes"]!.AsArray())!;
        Assert.Equal(("/form/backing", "ribs"), ((string?)change["pointer"], (string?)change["value"]));
        var backed = await service.Prediction(thin.With("/form/backing", "\"ribs\""));
        Assert.DoesNotContain(backed["checks"]!.AsArray(), check => (string?)check!["id"] == "form-yield");
    }

    // An inspection pulls the same panel over the form as it should be and as it is: bare, unless ribs back it.
    [Fact]
    public async Task An_inspection_pulls_over_the_form_as_it_is_backed()
    {
        var request = Requests.Standing().With("/measured", """{"angles":[8,16,16,16,16,8]}""");
        var bare = await service.Answer("/v1/inspections", request);
        var ribbed = await service.Answer("/v1/inspections", request.With("/form/backing", "\"ribs\""));
        Assert.True((double)bare["panel"]!["planned"]!["radius"]! < (double)ribbed["panel"]!["planned"]!["radius"]!);
    }

    private static void Near(double expected, JsonNode got, double share) => Near(expected, (double)got, share);

    private static void Near(double expected, double got, double share) => Assert.InRange(got, expected * (1 - share), expected * (1 + share));

    private static double[] Ends(double end, double inner, int count) => [end, .. Enumerable.Repeat(inner, count - 2), end];

    private sealed record Case(
        string Name,
        double Modulus,
        double Poisson,
        double Yield,
        double N,
        double K,
        double Thickness,
        double Lever,
        double[] Facets,
        double[] Folds,
        double Rotation,
        double Force,
        (double Rigid, double Bare)? Radius,
        (double Rigid, double Bare)? Sweep)
    {
        public JsonObject Request(string backing)
        {
            var stations = Folds.Select((fold, j) => FormattableString.Invariant(
                $$"""{ "angle": {{fold}}, "facetAfter": {{(j < Facets.Length ? Facets[j] : 60)}} }"""));
            return JsonNode.Parse(string.Create(CultureInfo.InvariantCulture, $$"""
                {
                  "units": "mm",
                  "panel": {
                    "material": {
                      "youngsModulus": {{Modulus}}, "poissonRatio": {{Poisson}}, "yield": {{Yield}}, "ultimate": {{1.2 * Yield}},
                      "strengthCoefficient": {{K}}, "strainHardening": {{N}}, "density": 2700, "minRadiusOverThickness": 1
                    },
                    "thickness": {{Thickness}}, "width": 300, "leadIn": 80, "leadOut": 150, "lever": {{Lever}}, "surface": "mid",
                    "curve": { "type": "arc", "radius": 100, "sweep": 60 }
                  },
                  "form": {
                    "material": { "id": "steel-cr-cs", "youngsModulus": 205000, "poissonRatio": 0.29 },
                    "thickness": 2, "foldRadius": 2, "leadIn": 60, "leadOut": 60, "backing": "{{backing}}"
                  },
                  "stations": [{{string.Join(", ", stations)}}]
                }
                """))!.AsObject();
        }
    }
}
