namespace Forming.Estimates;

/// <summary>What an element of work counts or measures.</summary>
public enum WorkUnit
{
    /// <summary>A mark on the flat blank.</summary>
    Mark,

    /// <summary>A metre of cut or edge.</summary>
    Metre,

    /// <summary>A test strip.</summary>
    Strip,

    /// <summary>A change of the stop.</summary>
    StopChange,

    /// <summary>A time the blank is put into the brake.</summary>
    Handling,

    /// <summary>A fold.</summary>
    Fold,

    /// <summary>A check against a template.</summary>
    Check,

    /// <summary>A curve pulled round a form.</summary>
    Pull,
}
