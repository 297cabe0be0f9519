namespace FormApi.Features.Forms;

/// <summary>A request whose form may be given by its stations.</summary>
internal interface IStationsRequest
{
    /// <summary>The form.</summary>
    FormInput? Form { get; }

    /// <summary>The panel, or null.</summary>
    PanelInput? Panel { get; }

    /// <summary>The folds of a form that needs no plan, or null.</summary>
    IReadOnlyList<StandingStationInput>? Stations { get; }
}
