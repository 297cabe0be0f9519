namespace Forming.Estimates;

/// <summary>One element of work with its time.</summary>
/// <param name="Id">Stable id such as <c>folding</c>.</param>
/// <param name="Text">What is done, in words.</param>
/// <param name="Quantity">How many, or how long [m]; of all forms together.</param>
/// <param name="Unit">What is counted or measured.</param>
/// <param name="Minutes">Minutes of one person.</param>
public sealed record WorkElement(string Id, string Text, double Quantity, WorkUnit Unit, Band Minutes)
{
    /// <summary>How many people do it at once, all of whose minutes count.</summary>
    public int People { get; init; } = 1;
}

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

    /// <summary>A clamp.</summary>
    Clamp,

    /// <summary>A form.</summary>
    Form,

    /// <summary>A rib.</summary>
    Rib,
}

/// <summary>What the elements of work count, in words.</summary>
internal static class WorkWords
{
    /// <summary>What a rate is for.</summary>
    /// <param name="unit">What the element counts or measures.</param>
    public static string EachOf(WorkUnit unit) => unit switch
    {
        WorkUnit.Metre => "length of edge",
        WorkUnit.StopChange => "change of the stop",
        WorkUnit.Mark => "mark",
        WorkUnit.Strip => "strip",
        WorkUnit.Handling => "time the blank is put into the brake",
        WorkUnit.Fold => "fold",
        WorkUnit.Check => "check",
        WorkUnit.Clamp => "clamp and person",
        WorkUnit.Form => "form",
        WorkUnit.Rib => "rib",
        _ => "pull and person",
    };
}
