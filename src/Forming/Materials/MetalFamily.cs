namespace Forming.Materials;

/// <summary>Families of sheet metal that share their dangers.</summary>
public enum MetalFamily
{
    /// <summary>Not known: the caller's own material.</summary>
    Other,

    /// <summary>Aluminium alloys.</summary>
    Aluminium,

    /// <summary>Uncoated carbon and low-alloy steels.</summary>
    Steel,

    /// <summary>Zinc-coated steel.</summary>
    GalvanizedSteel,

    /// <summary>Stainless steels.</summary>
    Stainless,

    /// <summary>Copper.</summary>
    Copper,

    /// <summary>Brass.</summary>
    Brass,

    /// <summary>Titanium.</summary>
    Titanium,

    /// <summary>Magnesium.</summary>
    Magnesium,
}
