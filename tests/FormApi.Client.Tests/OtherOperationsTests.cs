using FormApi.Client.Models;
using Microsoft.Kiota.Abstractions.Serialization;

namespace FormApi.Client.Tests;

/// <summary>What stands beside the forms, asked for with the generated client.</summary>
public sealed class OtherOperationsTests(Caller caller) : IClassFixture<Caller>
{
    [Fact]
    public async Task A_prediction_of_a_standing_form()
    {
        var request = new PredictionRequest
        {
            Units = LengthUnit.Mm,
            Panel = Jobs.With(Jobs.Arc(95, 60)).Panel,
            Form = new() { Material = new() { Id = "steel-cr-cs" }, Thickness = 2, FoldRadius = 2, LeadIn = 70, LeadOut = 60 },
            Ends = SteppingEnds.Half,
            Stations = [Fold(8), Fold(16), Fold(16), Fold(16), Fold(16), Fold(8, 60)],
        };
        var answer = (await caller.Client.V1.Forms.Prediction.PostAsync(request))!;

        AssertEchoed(answer);
        Assert.True(answer.Wraps);
        Assert.Equal(6, answer.Folds);
        Assert.Equal(5, answer.Facets!.Count);
        Assert.Equal(60, answer.WantedSweep);
        // It springs back from the 80 degrees that the form turns.
        Assert.InRange(answer.Sweep!.Value, 40, 80);
    }

    [Fact]
    public async Task A_program_for_a_press_with_a_punch_of_its_own()
    {
        var request = new ProgramRequest
        {
            Units = LengthUnit.In,
            Form = new() { Material = new() { Id = "steel-cr-cs" }, Thickness = 0.075, FoldRadius = 0.08, LeadIn = 3.5, LeadOut = 4, Width = 30 },
            Stations = [Fold(8, 0.9), Fold(16, 0.9), Fold(16, 0.9), Fold(8, 4)],
            Brake = new()
            {
                Kind = BrakeKind.Press,
                Length = 72,
                DieOpening = 0.5,
                Tools = new()
                {
                    Punch = new UntypedArray([Jobs.Pair(0, 0), Jobs.Pair(0.3, 0.5), Jobs.Pair(0.3, 5), Jobs.Pair(-0.3, 5), Jobs.Pair(-0.3, 0.5)]),
                    Opening = 7,
                    ForceCapacity = 90000,
                },
            },
        };
        var answer = (await caller.Client.V1.Programs.PostAsync(request))!;

        AssertEchoed(answer);
        Assert.NotEqual(PlanVerdict.CannotBeMade, answer.Verdict);
        Assert.Equal([1, 2, 3, 4], answer.Steps!.Select(step => step.Fold!.Value).Order());
        Assert.Equal(Handling.Load, answer.Steps![0].Handling);
    }

    [Fact]
    public async Task A_material_and_one_that_is_not_there()
    {
        var material = (await caller.Client.V1.Materials["ss-304"].GetAsync())!;
        Assert.Equal("ss-304", material.Id);
        Same.Within(Same.WithoutNulls(caller.Answered), Caller.Written(material));

        var problem = await Assert.ThrowsAsync<Problem>(() => caller.Client.V1.Materials["ss-3o4"].GetAsync());
        Assert.Equal((404, (Problem_code?)Problem_code.NotFound), (problem.ResponseStatusCode, problem.Code));
        Assert.Contains("ss-304", problem.Detail, StringComparison.Ordinal);
    }

    private static StandingStationInput Fold(double angle, double after = 20) => new() { Angle = angle, FacetAfter = after };

    private void AssertEchoed(IParsable answer)
    {
        Same.Within(caller.Sent, caller.Answered["request"]);
        Same.Within(Same.WithoutNulls(caller.Answered), Caller.Written(answer));
    }
}
