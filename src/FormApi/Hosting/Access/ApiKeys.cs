using System.Security.Cryptography;
using System.Text;
using FormApi.Hosting.Settings;

namespace FormApi.Hosting.Access;

/// <summary>The keys that are known, by their hashes.</summary>
/// <param name="keys">The keys.</param>
internal sealed class ApiKeys(IReadOnlyList<ApiKey> keys)
{
    private const int KeyBytes = 32;

    /// <summary>How many there are.</summary>
    public int Count => keys.Count;

    /// <summary>The key with a text, or null; every hash is compared, each in constant time.</summary>
    /// <param name="text">What the caller sent.</param>
    public ApiKey? Find(string text)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes(text), hash);
        ApiKey? found = null;
        foreach (var key in keys)
        {
            if (CryptographicOperations.FixedTimeEquals(hash, key.Hash))
                found = key;
        }

        return found;
    }

    /// <summary>The keys of the settings and of their file.</summary>
    /// <param name="settings">The settings.</param>
    /// <exception cref="FormatException">A line of the file is no key.</exception>
    public static ApiKeys Of(AccessSettings settings) => new(
    [
        .. settings.Keys.Select(key => ApiKey.Of(key.Name, key.Sha256, key.Scopes)),
        .. settings.KeysFile is { } file ? InFile(file) : [],
    ]);

    /// <summary>A new key, and the line of a file that lets it in.</summary>
    /// <param name="name">Who is to hold it.</param>
    public static (string Key, string Line) New(string name)
    {
        var key = Convert.ToBase64String(RandomNumberGenerator.GetBytes(KeyBytes)).TrimEnd('=').Replace('+', '-').Replace('/', '_');
        return (key, $"{name} {Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)))} compute docs");
    }

    private static IEnumerable<ApiKey> InFile(string file) => File.ReadLines(file)
        .Select((text, i) => (Text: text.Trim(), Number: i + 1))
        .Where(line => line.Text.Length > 0 && line.Text[0] != '#')
        .Select(line => line.Text.Split(' ', 3, StringSplitOptions.RemoveEmptyEntries) is [var name, { Length: 64 } hash, var scopes]
            && hash.All(char.IsAsciiHexDigit) && scopes.Split(' ').All(Scopes.All.Contains)
            ? ApiKey.Of(name, hash, scopes)
            : throw new FormatException($"Line {line.Number} of {file} is not a name, a SHA-256 in hexadecimal, and scopes."));
}

/// <summary>A known key.</summary>
/// <param name="Name">Who holds it.</param>
/// <param name="Hash">SHA-256 of its text.</param>
/// <param name="Scopes">What it opens.</param>
internal sealed record ApiKey(string Name, byte[] Hash, IReadOnlyList<string> Scopes)
{
    /// <summary>A key as settings write it.</summary>
    /// <param name="name">Who holds it.</param>
    /// <param name="sha256">Its hash in hexadecimal.</param>
    /// <param name="scopes">What it opens, separated by blanks.</param>
    public static ApiKey Of(string name, string sha256, string scopes) => new(name, Convert.FromHexString(sha256), scopes.Split(' '));
}
