using FormApi.Features.Forms;
using FormApi.Http.Units;
using Forming.Facets;
using Forming.Jobs;

namespace FormApi.Features.Predictions;

/// <summary>Fills in what a request left out; with stations, what has no use stays null.</summary>
internal static class PredictionDefaults
{
    // A half fold turns about half as far as its neighbour; a changing radius moves that a little.
    private const double MostOfHalfFold = 0.75;

    /// <summary>The request with every default shown, still in the caller's units.</summary>
    /// <param name="request">A request that passed its rules.</param>
    public static PredictionRequest Apply(PredictionRequest request)
    {
        var units = UnitSystem.Of(request.Units);
        if (request.Stations is { } stations)
        {
            return request with
            {
                Panel = StandingPanel(request.Panel, units),
                Form = StandingForm(request.Form!, request.Panel),
                Ends = request.Ends ?? EndsOf(stations),
            };
        }

        var form = FormDefaults.Apply(AsForm(request));
        return request with { Panel = form.Panel, Form = form.Form, Brake = form.Brake, Marks = form.Marks };
    }

    /// <summary>Half or full folds at the ends of an existing form, by its first two folds.</summary>
    /// <param name="stations">Its folds, at least two.</param>
    internal static SteppingEnds EndsOf(IReadOnlyList<StandingStationInput> stations) =>
        stations[0].Angle <= MostOfHalfFold * stations[1].Angle ? SteppingEnds.Half : SteppingEnds.Full;

    /// <summary>The request as one for a form; only without stations.</summary>
    /// <param name="request">The request.</param>
    public static FormRequest AsForm(PredictionRequest request) =>
        new(request.Units, request.Panel, request.Form, request.Brake, request.Marks);

    /// <summary>An existing form that a panel is pulled over, with every default that has a use there.</summary>
    /// <param name="form">A form that passed its rules.</param>
    /// <param name="panel">The panel.</param>
    internal static FormInput StandingForm(FormInput form, PanelInput panel) => form with
    {
        Material = MaterialInputs.ById(form.Material!),
        GaugeSystem = FormDefaults.GaugeSystemOf(form),
        Width = form.Width ?? panel.Width ?? (panel.Curve as TaperInput)?.Length,
        Backing = form.Backing ?? FormBacking.None,
        Assumed = null,
    };

    /// <summary>A panel pulled over an existing form, with every default that has a use there.</summary>
    /// <param name="panel">A panel that passed its rules.</param>
    /// <param name="units">The caller's units.</param>
    internal static PanelInput StandingPanel(PanelInput panel, UnitSystem units)
    {
        var whole = FormDefaults.Apply(panel, units);
        return whole with
        {
            Trim = null,
            Grain = null,
            Clamp = whole.Clamp! with { Height = null },
            Springback = panel.Springback?.EffectiveYield is null ? null : panel.Springback,
            Tolerance = null,
            StockSheets = null,
            Scatter = null,
        };
    }
}
