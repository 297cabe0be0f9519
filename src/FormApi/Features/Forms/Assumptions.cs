using Forming.Jobs;

namespace FormApi.Features.Forms;

/// <summary>
/// Which values of a request nobody gave. They are named in the echo, so that a request and its echo give one answer, and a caller's own
/// value is not called an assumption.
/// </summary>
internal static class Assumptions
{
    /// <summary>Those of the panel.</summary>
    /// <param name="panel">The panel as given.</param>
    public static PanelFigure[] Of(PanelInput panel) => panel.Assumed is { } named
        ? [.. named.Distinct().Order()]
        : [.. Open<PanelFigure>((panel.LeadIn is null, PanelFigure.LeadIn), (panel.LeadOut is null, PanelFigure.LeadOut))];

    /// <summary>Those of the form.</summary>
    /// <param name="form">The form as given.</param>
    public static FormFigure[] Of(FormInput form) => form.Assumed is { } named
        ? [.. named.Distinct().Order()]
        : [.. Open(
            (form.Material is null, FormFigure.Material),
            (form.IsSheetOpen(), FormFigure.Thickness),
            (form.FoldRadius is null, FormFigure.FoldRadius),
            (form.LeadIn is null, FormFigure.LeadIn),
            (form.LeadOut is null, FormFigure.LeadOut))];

    /// <summary>Those of the brake.</summary>
    /// <param name="brake">The brake as given.</param>
    public static BrakeFigure[] Of(BrakeInput brake) => brake.Assumed is { } named
        ? [.. named.Distinct().Order()]
        : [.. Open((brake.Length is null, BrakeFigure.Length))];

    /// <summary>All of them, as the library names them.</summary>
    /// <param name="request">The request with its defaults filled in.</param>
    public static OpenValue[] Of(FormRequest request) =>
    [
        .. Of(request.Panel).Select(figure => figure == PanelFigure.LeadIn ? OpenValue.PanelLeadIn : OpenValue.PanelLeadOut),
        .. Of(request.Form!).Select(figure => figure switch
        {
            FormFigure.Material => OpenValue.FormMaterial,
            FormFigure.Thickness => OpenValue.FormSheet,
            FormFigure.FoldRadius => OpenValue.FormFoldRadius,
            FormFigure.LeadIn => OpenValue.FormLeadIn,
            _ => OpenValue.FormLeadOut,
        }),
        .. Of(request.Brake!).Select(_ => OpenValue.BrakeLength),
    ];

    private static IEnumerable<T> Open<T>(params (bool IsOpen, T Figure)[] figures) =>
        figures.Where(figure => figure.IsOpen).Select(figure => figure.Figure);
}
