using FormApi.Features.Forms;
using FormApi.Features.Predictions;
using FormApi.Http;

namespace FormApi.Features.Inspections;

/// <summary>A request about the folds of a form: one that is planned first, or one that is given by its stations.</summary>
internal interface IFoldedRequest
{
    /// <summary>The caller's units.</summary>
    LengthUnit Units { get; }

    /// <summary>The form.</summary>
    FormInput Form { get; }

    /// <summary>The panel, or null.</summary>
    PanelInput? Panel { get; }

    /// <summary>The brake, or null.</summary>
    BrakeInput? Brake { get; }

    /// <summary>The marks, or null.</summary>
    MarksInput? Marks { get; }

    /// <summary>The folds of a form that needs no plan, or null.</summary>
    IReadOnlyList<StandingStationInput>? Stations { get; }
}
