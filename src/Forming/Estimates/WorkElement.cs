namespace Forming.Estimates;

/// <summary>One element of work with its time.</summary>
/// <param name="Id">Stable id such as <c>folding</c>.</param>
/// <param name="Text">What is done, in words.</param>
/// <param name="Quantity">How many, or how long [m]; of all forms together.</param>
/// <param name="Unit">What is counted or measured.</param>
/// <param name="Minutes">Minutes of one person.</param>
public sealed record WorkElement(string Id, string Text, double Quantity, WorkUnit Unit, Band Minutes);

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

/// <summary>What the elements of work count.</summary>
internal static class WorkWords
{
    /// <summary>Whether an element goes by length.</summary>
    /// <param name="id">Its id.</param>
    public static bool IsByLength(string id) => id is "cutting" or "finishing" or "trimming";

    /// <summary>What an element counts or measures, in words.</summary>
    /// <param name="id">Its id.</param>
    public static string EachOf(string id) => id switch
    {
        "layout" or "marking" => "mark",
        "test-strips" => "strip",
        "set-up" => "change of the stop",
        "handling" => "time the blank is put into the brake",
        "folding" => "fold",
        "checking" => "check",
        "clamping" or "pulling" => "pull",
        _ => "length of edge",
    };
}
