using System.Globalization;
using Forming.Results;

namespace Forming.Materials;

/// <summary>A text, practice or model that values rest on.</summary>
/// <param name="Key">Stable key such as <c>gardiner-1957</c>, by which code and tables cite it.</param>
/// <param name="Author">Author or issuing body; <c>not recorded</c> where the text was read but its name was not kept; may be
/// empty.</param>
/// <param name="Title">Title, or a description where there is none.</param>
/// <param name="Year">Year of publication, or null where it was not recorded or does not apply.</param>
/// <param name="Place">Page, equation, table or paragraph; may be empty.</param>
/// <param name="Access">Licence, and how it was read; may be empty.</param>
/// <param name="Status">How well the text itself was seen; a single value taken from it may be worse, never better.</param>
public sealed record Source(string Key, string Author, string Title, int? Year, string Place, string Access, Status Status)
{
    /// <summary>Author, title, year and place in one line, what is not recorded left out.</summary>
    public string Citation { get; } = string.Join(
        ", ", new[] { Author, Title, Year?.ToString(CultureInfo.InvariantCulture) ?? "", Place }.Where(part => part.Length > 0));
}

/// <summary>Where one value comes from.</summary>
/// <param name="Source">The text it was read in, or what it rests on.</param>
/// <param name="Status">How well it is supported.</param>
public readonly record struct Provenance(string Source, Status Status);
