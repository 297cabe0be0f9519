using FormApi.Client.Models;
using Microsoft.Kiota.Abstractions.Serialization;

namespace FormApi.Client.Tests;

/// <summary>Forms, asked for with the generated client.</summary>
public sealed class FormsTests(Caller caller) : IClassFixture<Caller>
{
    public static TheoryData<string> Kinds => [.. Jobs.Curves.Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Every_kind_of_curve_is_sent_echoed_and_read_back(string kind)
    {
        var (curve, sweep) = Jobs.Curves[kind];
        var answer = await Compute(Jobs.With(curve));

        Assert.IsType(curve.GetType(), answer.Request!.Panel!.Curve);
        Same.Within(caller.Sent, caller.Answered["request"]);
        Same.Within(Same.WithoutNulls(caller.Answered), Caller.Written(answer));

        Assert.NotEqual(PlanVerdict.CannotBeMade, answer.Verdict);
        var form = answer.Form!;
        Assert.Equal(form.Folds, form.Stations!.Count);
        Assert.Equal(form.Stations[^1].RunningAngle!.Value, form.Stations.Sum(station => station.Angle!.Value), 6);
        // Folds along rulings that fan out do not quite add up to the sweep seen from the end, nor do measured points say it exactly.
        var places = kind is "taper" or "points" ? 0 : 6;
        Assert.Equal(form.Sweep!.Value, form.Stations[^1].RunningAngle!.Value, kind == "taper" ? 1 : 6);
        // The panel springs back, so the form is bent by more: by the curve's own sweep and the overbend.
        Assert.Equal(sweep, form.Sweep.Value - answer.Panel!.Springback!.Overbend!.Value, places);
        Assert.True(answer.Panel.Springback.Overbend > 5);
    }

    [Fact]
    public async Task A_chain_keeps_its_pieces_and_its_flat()
    {
        var answer = await Compute(Jobs.With(Jobs.Segments(Jobs.Arc(75, 40), Jobs.Flat(90), Jobs.Arc(110, 35))));

        var echo = Assert.IsType<SegmentsInput>(answer.Request!.Panel!.Curve);
        Assert.Equal([typeof(ArcInput), typeof(FlatInput), typeof(ArcInput)], echo.Segments!.Select(piece => piece.GetType()));
        Assert.Equal(90, ((FlatInput)echo.Segments![1]).Length);
        Assert.Single(answer.Form!.Stations!, station => station.FacetAfter is >= 90 and < 150);
    }

    [Fact]
    public async Task A_taper_answers_with_lines_across_the_flat()
    {
        var answer = await Compute(Jobs.With(Jobs.Taper(Jobs.Arc(80, 75), Jobs.Arc(120, 75), 480)));

        Assert.NotNull(answer.Form!.Taper);
        Assert.All(answer.Form.Stations!, station =>
        {
            Assert.Equal(2, station.Near!.Count);
            Assert.Equal(2, station.Far!.Count);
            Assert.True(station.FacetEnds is [{ } near, { } far] && near > 0 && far > 0);
            var (across, along) = (station.Far[0]!.Value - station.Near[0]!.Value, station.Far[1]!.Value - station.Near[1]!.Value);
            Assert.Equal(station.Length!.Value, Math.Sqrt((across * across) + (along * along)), 6);
        });
        // Near is the tighter end: the facets are wider at the far one.
        Assert.True(answer.Form.Stations![0].FacetEnds![1] > answer.Form.Stations[0].FacetEnds![0]);
    }

    [Fact]
    public async Task A_sheet_of_ones_own_is_taken_property_by_property()
    {
        var request = Jobs.With(Jobs.Arc(180, 45));
        request.Panel!.Material = new()
        {
            YoungsModulus = 70000,
            PoissonRatio = 0.33,
            Yield = 128,
            Ultimate = 205,
            Elongation = 14,
            Density = 2680,
            StrengthCoefficient = 330,
            StrainHardening = 0.18,
            MinRadiusOverThickness = 1,
        };
        var answer = await Compute(request);
        var stock = await Compute(Jobs.With(Jobs.Arc(180, 45)));

        var own = answer.Request!.Panel!.Material!;
        Assert.Null(own.Id);
        Assert.Equal((70000, 128, 0.18), (own.YoungsModulus, own.Yield, own.StrainHardening));
        Assert.Contains(answer.Basis!, basis => basis is { Quantity: "panel.material.yield", Status: Status.Caller });
        var area = answer.Panel!.Blank!.Area!.Value;
        Assert.Equal(area * 1.2 * 2680 / 1e9, answer.Panel.Blank.Mass!.Value, 3);
        Assert.NotEqual(stock.Panel!.Springback!.FactorAtTightest, answer.Panel.Springback!.FactorAtTightest);
    }

    [Fact]
    public async Task A_drawing_comes_as_bytes()
    {
        await using var sheet = await caller.Client.V1.Forms.Drawing.PostAsync(Jobs.With(Jobs.Arc(90, 90)), request => request.Headers.Add("Accept", "image/svg+xml"));
        using var reader = new StreamReader(sheet!);
        Assert.Contains("<svg", await reader.ReadToEndAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refusal_is_a_typed_problem_with_every_pointer()
    {
        var request = Jobs.With(Jobs.Segments(Jobs.Arc(90, 45), Jobs.Arc(-5, 45)));
        request.Panel!.Thickness = 400;
        var problem = await Assert.ThrowsAsync<Problem>(() => Compute(request));

        Assert.Equal((422, (int?)422, (Problem_code?)Problem_code.InvalidValues), (problem.ResponseStatusCode, problem.Status, problem.Code));
        Assert.Equal(["/panel/curve/segments/1/radius", "/panel/thickness"], problem.Errors!.Select(fault => fault.Pointer).Order(StringComparer.Ordinal));
        var thickness = problem.Errors!.Single(fault => fault.Pointer == "/panel/thickness");
        Assert.Equal("out-of-range", thickness.Code);
        Assert.Equal(400, Number(thickness.Given));
        Assert.False(string.IsNullOrEmpty(thickness.Allowed));
        Assert.EndsWith("/problems/invalid-values", problem.Type, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_curve_of_no_kind_is_a_typed_problem_too()
    {
        var problem = await Assert.ThrowsAsync<Problem>(() => Compute(Jobs.With(new CurveInput())));
        Assert.Equal((400, (Problem_code?)Problem_code.MissingField), (problem.ResponseStatusCode, problem.Code));
        Assert.StartsWith("/panel/curve", Assert.Single(problem.Errors!).Pointer, StringComparison.Ordinal);
    }

    private static double Number(UntypedNode? given) => given switch
    {
        UntypedInteger whole => whole.GetValue(),
        UntypedLong whole => whole.GetValue(),
        UntypedDouble real => real.GetValue(),
        UntypedDecimal real => (double)real.GetValue(),
        _ => throw new InvalidOperationException("No number: " + given?.GetType().Name),
    };

    private async Task<FormAnswer> Compute(FormRequest request) => (await caller.Client.V1.Forms.PostAsync(request))!;
}
