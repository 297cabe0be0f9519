using Forming;

namespace FormApi.Features.Forms;

/// <summary>A request about the folds of a form: one that is planned first, or one that is given by its stations.</summary>
internal interface IFoldedRequest : IStationsRequest
{
    /// <summary>The caller's units.</summary>
    LengthUnit Units { get; }

    /// <summary>The brake, or null.</summary>
    BrakeInput? Brake { get; }

    /// <summary>The marks, or null.</summary>
    MarksInput? Marks { get; }
}
