using System.Reflection;
using Forming.Materials;
using Xunit.Sdk;

namespace Forming.Tests;

/// <summary>Feeds a theory from a printed table: one row a case, one column a parameter of the same name.</summary>
/// <param name="fileName">File under Published.</param>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class PublishedAttribute(string fileName) : DataAttribute
{
    public override IEnumerable<object?[]> GetData(MethodInfo testMethod)
    {
        var parameters = testMethod.GetParameters();
        return PublishedTable.Read(fileName).Rows.Select(row => parameters.Select(parameter => Value(row, parameter)).ToArray());
    }

    private static object? Value(CsvRow row, ParameterInfo parameter) => parameter.ParameterType switch
    {
        var type when type == typeof(string) => row.Text(parameter.Name!),
        var type when type == typeof(double) => row.Number(parameter.Name!),
        var type when type == typeof(double?) => row.OptionalNumber(parameter.Name!),
        var type => throw new NotSupportedException($"{parameter.Name} is a {type.Name}: a table holds numbers and words."),
    };
}
