using System.Text.Json;
using FormApi.Http.Problems;
using FormApi.Http.Results;
using Forming.Drawing;

namespace FormApi.Features.Drawings;

/// <summary>What a drawing's query asks for.</summary>
/// <param name="Paper">Paper of a PDF; null leaves it to the units.</param>
/// <param name="Part">The only part; null for the whole job.</param>
/// <param name="Layout">How much of a blank a PDF lays out; null leaves it to the job.</param>
internal sealed record DrawingQuery(PaperSize? Paper, DrawingPart? Part, BlankLayout? Layout)
{
    private static readonly string[] MediaOfParts = [MediaTypes.Svg, MediaTypes.Pdf, MediaTypes.Dxf];

    /// <summary>The words of a parameter.</summary>
    /// <typeparam name="T">Its values.</typeparam>
    public static IReadOnlyList<string> Words<T>()
        where T : struct, Enum => [.. Enum.GetNames<T>().Select(JsonNamingPolicy.KebabCaseLower.ConvertName)];

    /// <summary>Reads a query.</summary>
    /// <param name="paper">Paper of a PDF, or null.</param>
    /// <param name="part">The only part, or null.</param>
    /// <param name="layout">Layout of a blank, or null.</param>
    /// <param name="media">Media type of the answer.</param>
    /// <param name="query">What it asks for; null where it cannot be read.</param>
    /// <returns>What is wrong with it, or null.</returns>
    public static ProblemResult? Read(string? paper, string? part, string? layout, string media, out DrawingQuery? query)
    {
        query = null;
        if (Unknown<PaperSize>("paper", paper, out var size) is { } noPaper)
            return noPaper;
        if (Unknown<DrawingPart>("part", part, out var only) is { } noPart)
            return noPart;
        if (Unknown<BlankLayout>("layout", layout, out var shown) is { } noLayout)
            return noLayout;
        if (only is not null && !MediaOfParts.Contains(media))
            return new(ProblemKinds.BadRequest, $"{media} is not made of one part: accept {string.Join(", ", MediaOfParts)}, or leave part out.");
        query = new(size, only, shown);
        return null;
    }

    private static ProblemResult? Unknown<T>(string name, string? word, out T? value)
        where T : struct, Enum
    {
        value = null;
        if (word is null)
            return null;
        var words = Words<T>();
        if (words.Contains(word))
        {
            value = Enum.GetValues<T>()[words.ToList().IndexOf(word)];
            return null;
        }

        return new(ProblemKinds.BadRequest, $"The {name} is not known: {string.Join(", ", words.SkipLast(1))} or {words[^1]}.");
    }
}
