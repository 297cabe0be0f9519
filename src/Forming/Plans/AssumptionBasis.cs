using Forming.Jobs;
using Forming.Results;

namespace Forming.Plans;

/// <summary>Why a value that was left open is what it is.</summary>
internal static class AssumptionBasis
{
    private const string Practice = "common practice, no source";

    /// <summary>What a chosen value rests on.</summary>
    /// <param name="open">The value.</param>
    public static Basis Of(OpenValue open)
    {
        var (quantity, method) = open switch
        {
            OpenValue.PanelLeadIn => ("panel.leadIn", "left open: as long as the form's lead-in, which the clamp bears on"),
            OpenValue.PanelLeadOut => ("panel.leadOut", "left open: long enough for two hands and a lever; with a mirrored panel the flat between"),
            OpenValue.FormMaterial => ("form.material", "left open: cold-rolled mild steel, which every shop has and any brake folds"),
            OpenValue.FormSheet => (
                "form.thickness",
                "left open: the thinnest standard sheet that carries the pull bare, by a quick plan, with a third of its yield to spare; ribs where none does"),
            OpenValue.FormFoldRadius => ("form.foldRadius", "left open: one thickness of the form's sheet, which the nose of most brakes gives"),
            OpenValue.FormLeadIn => ("form.leadIn", "left open: room for a clamp, and enough for the brake to hold"),
            OpenValue.FormLeadOut => ("form.leadOut", "left open: enough for the brake to hold"),
            _ => ("brake.length", "left open: a brake as long as the longest fold"),
        };
        return new(quantity, method, Practice, Status.Assumption);
    }
}
