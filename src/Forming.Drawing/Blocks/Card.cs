using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>A page to fill in by hand.</summary>
/// <param name="Name">Its name.</param>
/// <param name="About">What it is for, in a sentence.</param>
/// <param name="Blocks">What is on it.</param>
internal sealed record Card(string Name, string About, IEnumerable<Block> Blocks)
{
    /// <summary>The card of a job that a part stands for.</summary>
    /// <param name="job">The job.</param>
    /// <param name="part">The part.</param>
    /// <returns>Null where the part is none.</returns>
    public static Card? Of(DrawingJob job, DrawingPart part) => part switch
    {
        DrawingPart.StripCard => new("Strip card", "A page to fill in for test strips.", StripCard.Of(job)),
        DrawingPart.PanelCard => new("Panel card", "A page to fill in for a panel and its form.", PanelCard.Of(job)),
        _ => null,
    };
}
