using FluentValidation;
using FormApi.Http.Rules;
using Forming.Drawing;

namespace FormApi.Features.Forms;

/// <summary>What is written on the job's sheets, as given; it changes no value. Left out: not on the sheet.</summary>
/// <param name="Title">What the sheet is of; at most 80 characters.</param>
/// <param name="Part">Name or number of the part; at most 60 characters, as all below.</param>
/// <param name="DrawingNumber">Number of the drawing.</param>
/// <param name="Customer">The customer.</param>
/// <param name="Order">The customer's order.</param>
/// <param name="Revision">The revision.</param>
/// <param name="Date">The date, as it is to be read.</param>
internal sealed record TitleBlockInput(
    string? Title = null,
    string? Part = null,
    string? DrawingNumber = null,
    string? Customer = null,
    string? Order = null,
    string? Revision = null,
    string? Date = null)
{
    /// <summary>The same for a drawing.</summary>
    public TitleBlock AsDrawn() => new(Title, Part, DrawingNumber, Customer, Order, Revision, Date);
}

/// <summary>Rules for what is written on sheets.</summary>
internal sealed class TitleBlockInputRules : AbstractValidator<TitleBlockInput>
{
    private const int LongestTitle = 80;
    private const int Longest = 60;

    /// <summary>The rules; no units in them.</summary>
    public static TitleBlockInputRules Rules { get; } = new();

    private TitleBlockInputRules()
    {
        Shown(RuleFor(sheet => sheet.Title), LongestTitle);
        Shown(RuleFor(sheet => sheet.Part), Longest);
        Shown(RuleFor(sheet => sheet.DrawingNumber), Longest);
        Shown(RuleFor(sheet => sheet.Customer), Longest);
        Shown(RuleFor(sheet => sheet.Order), Longest);
        Shown(RuleFor(sheet => sheet.Revision), Longest);
        Shown(RuleFor(sheet => sheet.Date), Longest);
    }

    private static void Shown(IRuleBuilderInitial<TitleBlockInput, string?> field, int longest) => field
        .Cascade(CascadeMode.Stop)
        .Must(text => text is null || !string.IsNullOrWhiteSpace(text)).Else("empty", "The text is empty.", "a text, or leave the field out")
        .MaximumLength(longest).Else("too-long", "The text is too long for the sheet.", $"at most {longest} characters")
        .Must(text => text is null || TitleBlock.NotShown(text) is null).Else(
            "not-shown",
            "The sheet cannot show every character of this text.",
            "Latin, Greek and Cyrillic letters, digits, spaces and common signs, each as one character");
}
