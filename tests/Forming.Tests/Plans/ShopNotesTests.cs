using System.Globalization;
using Forming.Jobs;
using Forming.Materials;
using Forming.Results;

namespace Forming.Tests.Plans;

/// <summary>What a newcomer is told, and only where it applies.</summary>
public class ShopNotesTests
{
    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90));

    private static readonly PanelSpec Steel = Arc with { Sheet = new(Workshop.Of("steel-cr-cs"), 1) };

    [Theory]
    [InlineData(90, 45)]
    [InlineData(60, 30)]
    public void Bumped_directly_a_panel_takes_a_hit_every_two_degrees(double sweep, int hits) =>
        Assert.Contains(
            FormattableString.Invariant($"{hits} hits"), Note(Arc with { Curve = Workshop.Arc(90, sweep) }, "folds-of-form"), StringComparison.Ordinal);

    [Fact]
    public void A_wide_panel_is_pulled_by_a_bar()
    {
        Assert.NotNull(Note(Arc with { WidthMm = 600 }, "pull-by-bar"));
        Assert.Null(Note(Arc with { WidthMm = 200 }, "pull-by-bar"));
    }

    // By DIN 6935 K = 0.325 for a fold radius of one thickness; handbook rows give 0.35 to 0.45, from memory.
    [Fact]
    public void Two_handbooks_differ_in_the_neutral_factor_and_a_measured_one_settles_it()
    {
        var form = Workshop.Form() with { FoldRadiusMm = 2 };
        Assert.NotNull(NoteOf(form));
        Assert.Null(NoteOf(form with { NeutralFactor = 0.4 }));

        static string? NoteOf(FormSpec form) =>
            Workshop.Plan(Arc, form).ShopNotes.SingleOrDefault(note => note.Id == "neutral-factor")?.Text.ToString(CultureInfo.InvariantCulture);
    }

    [Theory]
    [InlineData("steel-cr-cs", true)]
    [InlineData("steel-galvanized", true)]
    [InlineData("steel-hsla-340", false)]
    [InlineData("ss-304", false)]
    [InlineData("al-3003-h14", false)]
    public void Only_low_carbon_steel_flutes(string sheet, bool flutes) =>
        Assert.Equal(flutes, Note(Arc with { Sheet = new(Workshop.Of(sheet), 1) }, "fluting") is not null);

    [Fact]
    public void A_yield_from_a_certificate_is_asked_about_and_the_tables_is_not()
    {
        Assert.Null(Note(Steel, "actual-yield"));
        var own = Steel.Sheet.Material with
        {
            YieldMpa = 240,
            Provenance = new Dictionary<string, Provenance>(Steel.Sheet.Material.Provenance) { ["yield"] = new("caller", Status.Caller) },
        };
        Assert.NotNull(Note(Steel with { Sheet = new(own, 1) }, "actual-yield"));
    }

    // 1 mm of steel weighs 77 N/m²: 250 mm lift by 2.4 N a mm of width, 400 mm by 6.2 N, of a bending moment of some 60 N.
    [Theory]
    [InlineData(200, false)]
    [InlineData(400, true)]
    public void A_long_flat_past_the_curve_weighs(double leadOut, bool heavy)
    {
        var panel = Steel with { LeadOutMm = leadOut };
        var note = Note(panel, "own-weight");
        Assert.Equal(heavy, note is not null);
        if (note is null)
            return;
        var share = 7850e-9 * 9.80665 * leadOut * leadOut / 2 / Workshop.Plan(panel).Panel.Pull.MomentPerWidth;
        Assert.Contains(share.ToString("P0", CultureInfo.InvariantCulture), note, StringComparison.Ordinal);
    }

    [Fact]
    public void Friction_is_said_to_be_left_out_where_a_pull_was_simulated()
    {
        Assert.NotNull(Note(Arc with { Predict = true, LeverMm = 100 }, "friction"));
        Assert.Null(Note(Arc, "friction"));
    }

    private static string? Note(PanelSpec panel, string id) => Workshop.Plan(panel).ShopNotes.SingleOrDefault(note => note.Id == id)?
        .Text.ToString(CultureInfo.InvariantCulture);
}
