namespace Forming.Estimates;

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
