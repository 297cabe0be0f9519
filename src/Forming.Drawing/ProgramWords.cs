using Forming.Programs;
using Forming.Programs.Brakes;

namespace Forming.Drawing;

/// <summary>The words of a program, on a sheet and in a file.</summary>
internal static class ProgramWords
{
    /// <summary>How the part is moved to a fold.</summary>
    /// <param name="handling">The handling.</param>
    public static string Of(Handling handling) => handling switch
    {
        Handling.Load => "load",
        Handling.ReEnter => "re-enter",
        Handling.Turn => "turn",
        _ => "push",
    };

    /// <summary>The same as a shop says it.</summary>
    /// <param name="handling">The handling.</param>
    public static string OnSheet(Handling handling) => handling == Handling.Push ? "slide" : Of(handling);

    /// <summary>An edge of the part.</summary>
    /// <param name="edge">The edge.</param>
    public static string Of(PartEdge edge) => edge == PartEdge.Start ? "start" : "end";

    /// <summary>What places the part.</summary>
    /// <param name="by">What places it.</param>
    public static string Of(GaugedBy by) => by switch
    {
        GaugedBy.FoldedPart => "folded-part",
        GaugedBy.Mark => "mark",
        _ => "flat",
    };
}
