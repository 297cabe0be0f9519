using System.Text.RegularExpressions;

namespace FormApi.Hosting.Settings;

/// <summary>Refuses settings that are not known or cannot be used, before anything is built from them.</summary>
internal static partial class SettingsCheck
{
    /// <summary>The first fault in two lines, or null: the setting and its value, then what is allowed.</summary>
    /// <param name="configuration">The settings.</param>
    public static string? FirstFault(IConfiguration configuration) =>
        Setting.Sections.SelectMany(section => Given(configuration.GetSection(section.Name)))
            .Select(FaultOf)
            .FirstOrDefault(fault => fault is not null);

    private static IEnumerable<(string Name, string Value)> Given(IConfigurationSection section)
    {
        // An empty list in a file is a value that says nothing.
        if (!string.IsNullOrEmpty(section.Value))
            yield return (section.Path.Replace(":", "__", StringComparison.Ordinal), section.Value);
        foreach (var given in section.GetChildren().SelectMany(Given))
            yield return given;
    }

    private static string? FaultOf((string Name, string Value) given)
    {
        var plain = Number().Replace(given.Name, "__#");
        var setting = Setting.All.FirstOrDefault(known => known.Name.Equals(plain, StringComparison.OrdinalIgnoreCase));
        if (setting is null)
        {
            var section = plain.Split("__")[0] + "__";
            var known = Setting.All.Select(one => one.Name).Where(name => name.StartsWith(section, StringComparison.OrdinalIgnoreCase));
            return $"{given.Name} is not a setting of this service.\nAllowed: {string.Join(", ", known)}.";
        }

        return setting.Takes(given.Value) ? null : $"{given.Name} cannot be \"{given.Value}\".\nAllowed: {setting.Allowed}.";
    }

    [GeneratedRegex(@"__\d+(?=__|$)")]
    private static partial Regex Number();
}
