using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using FormApi.Http;
using FormApi.Http.Links;
using FormApi.Http.Rules;

namespace FormApi.Hosting.Settings;

/// <summary>One setting: the table in the README and the check at the start are both made from these.</summary>
/// <param name="Name">Its name in the environment; # is a number from 0.</param>
/// <param name="Property">Where it is bound to.</param>
/// <param name="Default">Its default as text; empty where it has none.</param>
internal sealed record Setting(string Name, PropertyInfo Property, string Default)
{
    private const string Item = "#";

    /// <summary>The sections of this service's own.</summary>
    public static IReadOnlyList<(string Name, Type Type)> Sections { get; } =
    [
        (AccessSettings.Section, typeof(AccessSettings)),
        (Limits.Section, typeof(Limits)),
        (PublicAddress.Section, typeof(PublicAddress)),
        (CorsSettings.Section, typeof(CorsSettings)),
        (ProxySettings.Section, typeof(ProxySettings)),
        (DrainSettings.Section, typeof(DrainSettings)),
    ];

    /// <summary>All settings.</summary>
    public static IReadOnlyList<Setting> All { get; } =
        [.. Sections.SelectMany(section => Of(section.Type, section.Name))];

    /// <summary>What it may be, in words.</summary>
    public string Allowed
    {
        get
        {
            if (Property.GetCustomAttribute<RangeAttribute>() is { } range)
                return string.Create(CultureInfo.InvariantCulture, $"{range.Minimum} to {range.Maximum}");
            if (ValueType == typeof(bool))
                return "true, false";
            return Property.GetCustomAttribute<AllowedTextAttribute>()?.Words ?? "text";
        }
    }

    /// <summary>Whether a text is a value of it.</summary>
    /// <param name="text">The text.</param>
    public bool Takes(string text)
    {
        if (ValueType == typeof(string))
            return Property.GetCustomAttributes<ValidationAttribute>().All(rule => rule.IsValid(text));
        if (ValueType == typeof(bool))
            return bool.TryParse(text, out _);
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && (ValueType != typeof(int) || int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _))
            && Property.GetCustomAttribute<RangeAttribute>()?.IsValid(ValueType == typeof(int) ? (int)number : number) != false;
    }

    private Type ValueType => ItemOf(Property.PropertyType) ?? Property.PropertyType;

    private static IEnumerable<Setting> Of(Type type, string path)
    {
        var defaults = Activator.CreateInstance(type);
        foreach (var property in type.GetProperties().Where(property => property.CanWrite))
        {
            var name = $"{path}__{property.Name}";
            var item = ItemOf(property.PropertyType);
            if (item is not null)
                name += "__" + Item;
            if ((item ?? property.PropertyType) is { IsClass: true } inner && inner != typeof(string))
            {
                foreach (var setting in Of(inner, name))
                    yield return setting;
            }
            else
            {
                yield return new(name, property, item is null ? TextOf(property.GetValue(defaults)) : "");
            }
        }
    }

    private static string TextOf(object? value) =>
        value is bool isSet ? (isSet ? "true" : "false") : Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";

    private static Type? ItemOf(Type type) => type.IsGenericType ? type.GetGenericArguments()[0] : null;
}
