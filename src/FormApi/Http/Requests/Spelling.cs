namespace FormApi.Http.Requests;

/// <summary>Finds what a misspelt word was meant to be.</summary>
internal static class Spelling
{
    /// <summary>The word that comes nearest, or null where none is near.</summary>
    /// <param name="given">What was written.</param>
    /// <param name="words">The words there are.</param>
    public static string? Nearest(string given, IEnumerable<string> words)
    {
        if (given.Length is 0 or > 60)
            return null;
        var (best, least) = (default(string), Math.Max(1, (given.Length + 1) / 3) + 1);
        foreach (var word in words)
        {
            var distance = Distance(given.ToUpperInvariant(), word.ToUpperInvariant());
            if (distance < least)
                (best, least) = (word, distance);
        }

        return best;
    }

    /// <summary>What comes nearest, however far, nearest first.</summary>
    /// <param name="given">What was written.</param>
    /// <param name="words">The words there are, each with what it stands for.</param>
    /// <param name="count">How many.</param>
    public static IEnumerable<string> Nearest(string given, IEnumerable<(string Word, string Means)> words, int count)
    {
        var written = Plain(given.Length > 60 ? given[..60] : given);
        return words
            .OrderBy(word => Distance(written, Plain(word.Word)))
            .Select(word => word.Means)
            .Distinct()
            .Take(count);

        static string Plain(string text) => string.Concat(text.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();
    }

    // Levenshtein: the fewest letters to add, drop or change.
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1));
                corner = above;
            }
        }

        return row[b.Length];
    }
}
