using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Results;

namespace FormApi.Features.Forms;

/// <summary>One caution that the request calls for.</summary>
/// <param name="Id">Stable id such as <c>sharp-edges</c>.</param>
/// <param name="Level">How serious.</param>
/// <param name="Text">The caution.</param>
internal sealed record SafetyResult(
    string Id,
    [property: InFull, JsonConverter(typeof(WordConverter<SafetyLevel>))] SafetyLevel Level,
    [property: InFull] string Text)
{
    /// <summary>The caution in the caller's units.</summary>
    /// <param name="note">The caution.</param>
    /// <param name="units">The caller's units.</param>
    public static SafetyResult From(SafetyNote note, UnitSystem units) => new(note.Id, note.Level, units.Wording.Of(note.Text));
}

/// <summary>One hint that saves a panel.</summary>
/// <param name="Id">Stable id such as <c>burr-side</c>.</param>
/// <param name="Text">The hint.</param>
internal sealed record ShopNoteResult(string Id, string Text)
{
    /// <summary>The hint in the caller's units.</summary>
    /// <param name="note">The hint.</param>
    /// <param name="units">The caller's units.</param>
    public static ShopNoteResult From(ShopNote note, UnitSystem units) => new(note.Id, units.Wording.Of(note.Text));
}

/// <summary>What a headline value rests on.</summary>
/// <param name="Quantity">The value, by its name in the answer.</param>
/// <param name="Method">The formula or method, in words.</param>
/// <param name="Source">The published text, or what is used in its place.</param>
/// <param name="Status">How well it is supported.</param>
internal sealed record BasisResult(
    string Quantity,
    string Method,
    string Source,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status)
{
    /// <summary>The basis of a figure.</summary>
    /// <param name="basis">The basis.</param>
    public static BasisResult From(Basis basis) => new(basis.Quantity, basis.Method, basis.Source, basis.Status);
}
