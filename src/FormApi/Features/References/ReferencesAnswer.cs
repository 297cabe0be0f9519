using System.Text.Json.Serialization;
using FormApi.Http;
using FormApi.Http.Json;
using Forming.Materials;
using Forming.Results;

namespace FormApi.Features.References;

/// <summary>Every text, practice or model that a value of this service rests on.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="References">The sources by key.</param>
internal sealed record ReferencesAnswer(string Engine, ReferenceAnswer[] References)
{
    /// <summary>All sources.</summary>
    public static ReferencesAnswer All() =>
        new(EngineVersion.Current, [.. SourceCatalog.All.Select(ReferenceAnswer.From)]);
}

/// <summary>One source.</summary>
/// <param name="Key">Key by which values cite it.</param>
/// <param name="Author">Author or issuing body; may be empty.</param>
/// <param name="Title">Title, or a description where there is none.</param>
/// <param name="Year">Year of publication; null where it does not apply.</param>
/// <param name="Place">Page, equation, table or paragraph; may be empty.</param>
/// <param name="Access">Licence, and how it was read; may be empty.</param>
/// <param name="Status">How well the text itself was seen.</param>
internal sealed record ReferenceAnswer(
    string Key,
    string Author,
    string Title,
    int? Year,
    string Place,
    string Access,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status)
{
    /// <summary>One source.</summary>
    /// <param name="source">The source.</param>
    public static ReferenceAnswer From(Source source) =>
        new(source.Key, source.Author, source.Title, source.Year, source.Place, source.Access, source.Status);
}
