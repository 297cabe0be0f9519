namespace Forming.Springback;

/// <summary>Where the hardening of a flow curve comes from.</summary>
public enum FlowCurveOrigin
{
    /// <summary>Not known: perfectly plastic.</summary>
    Unknown,

    /// <summary>K and n from the catalogue.</summary>
    Catalogue,

    /// <summary>K and n from the caller, used as given.</summary>
    Caller,

    /// <summary>Estimated from yield, ultimate strength and elongation.</summary>
    Estimated,

    /// <summary>The catalogue's K and n miss the proof stress or the ultimate strength, and an estimate through both stands in their place, in part or wholly.</summary>
    CatalogueReplaced,

    /// <summary>The first estimate misses the proof stress, and one through it stands in its place, in part or wholly.</summary>
    EstimateReplaced,
}
