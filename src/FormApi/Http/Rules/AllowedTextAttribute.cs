using System.ComponentModel.DataAnnotations;

namespace FormApi.Http.Rules;

/// <summary>What a text may be, in words for whoever sets it.</summary>
/// <param name="pattern">The pattern it has to match.</param>
/// <param name="words">The words.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class AllowedTextAttribute(string pattern, string words) : RegularExpressionAttribute(pattern)
{
    /// <summary>The words.</summary>
    public string Words => words;
}
