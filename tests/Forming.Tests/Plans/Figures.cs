using System.Collections;
using System.Reflection;

namespace Forming.Tests.Plans;

/// <summary>Every number in a result, wherever it stands.</summary>
internal static class Figures
{
    /// <summary>The numbers of a result with the path of each.</summary>
    public static IEnumerable<(string Path, double Value)> Of(object? result, string path = "plan")
    {
        switch (result)
        {
            case null or string or bool or Enum or int or Type:
                yield break;
            case double number:
                yield return (path, number);
                yield break;
            case FormattableString text:
                foreach (var argument in text.GetArguments().SelectMany(argument => Of(argument, path + ".text")))
                    yield return argument;
                yield break;
            case IEnumerable list:
                var i = 0;
                foreach (var inside in list.Cast<object?>().SelectMany(item => Of(item, $"{path}[{i++}]")))
                    yield return inside;
                yield break;
        }

        foreach (var property in result.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (property.GetIndexParameters().Length > 0)
                continue;
            foreach (var inside in Of(property.GetValue(result), $"{path}.{property.Name}"))
                yield return inside;
        }
    }
}
