namespace Forming.Drawing;

/// <summary>A part that is drawn by itself at 1:1, to cut, to mark or to hold against the work.</summary>
public enum DrawingPart
{
    /// <summary>The flat form blank with its lines.</summary>
    FormBlank,

    /// <summary>The flat panel blank with its registration marks.</summary>
    PanelBlank,

    /// <summary>Template for the folded form, held against its contact face.</summary>
    CheckTemplate,

    /// <summary>Rib under the form, as often as the plan wants it.</summary>
    Rib,

    /// <summary>Gauge for the inside face of the finished panel.</summary>
    GaugeInside,

    /// <summary>Gauge for the outside face of the finished panel.</summary>
    GaugeOutside,

    /// <summary>Gauge for the outside face of the panel while it is pulled.</summary>
    GaugePulled,

    /// <summary>A page to fill in by hand: strips of the panel's sheet, and where to measure them.</summary>
    StripCard,

    /// <summary>A page to fill in by hand: what was measured on a panel and on its form; not for a taper.</summary>
    PanelCard,
}

/// <summary>How much of a flat blank the 1:1 pages show.</summary>
public enum BlankLayout
{
    /// <summary>A strip along one edge with every line and its values, one page wide; not for a taper.</summary>
    Stick,

    /// <summary>The whole blank.</summary>
    Full,
}
