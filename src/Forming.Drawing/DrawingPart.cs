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

    /// <summary>Card to fill in by hand with what was measured on the panel; not for a taper, and not for a machine.</summary>
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
