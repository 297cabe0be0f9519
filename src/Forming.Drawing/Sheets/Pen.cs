namespace Forming.Drawing.Sheets;

/// <summary>Kinds of line, told apart by weight and dash alone so that black and white print will do.</summary>
internal enum Pen
{
    /// <summary>Edge of a part.</summary>
    Outline,

    /// <summary>Fold line.</summary>
    Fold,

    /// <summary>Bend tangent line.</summary>
    Tangent,

    /// <summary>Sight line.</summary>
    Sight,

    /// <summary>Edge of a thin sheet in section.</summary>
    Sheet,

    /// <summary>Edge of a part in another state.</summary>
    Phantom,

    /// <summary>Line of symmetry.</summary>
    Centre,

    /// <summary>Leader, rule, scale.</summary>
    Leader,

    /// <summary>Registration mark.</summary>
    Mark,
}
