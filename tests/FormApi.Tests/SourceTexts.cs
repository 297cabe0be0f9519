using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace FormApi.Tests;

/// <summary>Every text of <c>src</c> that a person may read: literals of more than one word, with <c>{…}</c> where a value is put in.</summary>
public static class SourceTexts
{
    /// <summary>Each once, in order of the alphabet.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Files().SelectMany(TextsOf).Where(IsProse).Distinct().Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Files() => Directory.EnumerateFiles(Repository.PathOf("src"), "*.cs", SearchOption.AllDirectories)
        .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    private static IEnumerable<string> TextsOf(string path) => CSharpSyntaxTree.ParseText(File.ReadAllText(path)).GetRoot()
        .DescendantNodes().OfType<ExpressionSyntax>()
        .Where(node => IsText(node) && !(node.Parent is BinaryExpressionSyntax sum && IsText(sum)) && !InAttribute(node))
        .Select(Template);

    // A sum of texts is one text.
    private static bool IsText(ExpressionSyntax node) => node switch
    {
        LiteralExpressionSyntax literal => literal.IsKind(SyntaxKind.StringLiteralExpression),
        InterpolatedStringExpressionSyntax => true,
        BinaryExpressionSyntax sum => sum.IsKind(SyntaxKind.AddExpression) && (IsText(sum.Left) || IsText(sum.Right)),
        _ => false,
    };

    // Patterns, routes and names for the compiler are read by no caller.
    private static bool InAttribute(SyntaxNode node) => node.Ancestors().Any(above => above is AttributeSyntax);

    private static string Template(ExpressionSyntax node) => node switch
    {
        LiteralExpressionSyntax literal when IsText(literal) => literal.Token.ValueText,
        InterpolatedStringExpressionSyntax text => string.Concat(text.Contents.Select(part => part is InterpolatedStringTextSyntax plain ? plain.TextToken.ValueText : "{…}")),
        BinaryExpressionSyntax sum when IsText(sum) => Template(sum.Left) + Template(sum.Right),
        _ => "{…}",
    };

    // Two words or more; a single one is a name, an id or a unit.
    private static bool IsProse(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Count(word => word.Count(char.IsAsciiLetter) > 1) > 1;
}
