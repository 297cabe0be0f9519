namespace Forming.Drawing.Blocks;

/// <summary>One picture of a strip with the words below it.</summary>
/// <param name="Heading">What is done.</param>
/// <param name="Lines">How.</param>
/// <param name="Picture">The brake with the part in it.</param>
internal sealed record StripFrame(string Heading, IReadOnlyList<string> Lines, BrakePicture Picture);
