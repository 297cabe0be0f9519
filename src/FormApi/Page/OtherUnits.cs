using System.Collections;
using System.Reflection;
using System.Text.Json;
using FormApi.Features.Forms;
using FormApi.Http.Json;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;

namespace FormApi.Page;

/// <summary>A form request in the other units: what a field measures is read from the rule that holds its range.</summary>
internal static class OtherUnits
{
    /// <summary>The same job in other units.</summary>
    /// <param name="request">The job.</param>
    /// <param name="to">The units wanted.</param>
    public static FormRequest Of(FormRequest request, LengthUnit to)
    {
        var (old, wanted) = (UnitSystem.Of(request.Units), UnitSystem.Of(to));
        return old == wanted ? request : (FormRequest)Converted(request, old, wanted) with { Units = to };
    }

    private static object Converted(object record, UnitSystem old, UnitSystem wanted)
    {
        // The step of a tape is in the tape's own unit, whatever the request is in.
        if (record is MarksInput marks)
            return marks with { Tape = marks.Tape ?? (marks.Resolution is null ? null : old.Unit) };
        var type = record.GetType();
        var constructor = type.GetConstructors(BindingFlags.Instance | BindingFlags.Public).MaxBy(one => one.GetParameters().Length)!;
        return constructor.Invoke([.. constructor.GetParameters().Select(parameter => Value(
            type.GetProperty(parameter.Name!)!.GetValue(record), type, JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!), old, wanted))]);
    }

    private static object? Value(object? value, Type type, string field, UnitSystem old, UnitSystem wanted) => value switch
    {
        double number => Number(number, MeasureOf(type, field), old, wanted),
        IReadOnlyList<Pair> points => points.Select(point => new Pair(Number(point.First, Measure.Length, old, wanted), Number(point.Second, Measure.Length, old, wanted))).ToArray(),
        string or null => value,
        IEnumerable items => Items(items, old, wanted),
        _ when value.GetType().IsClass => Converted(value, old, wanted),
        _ => value,
    };

    private static Array Items(IEnumerable items, UnitSystem old, UnitSystem wanted)
    {
        object[] all = [.. items.Cast<object>().Select(item => item.GetType().IsClass && item is not string ? Converted(item, old, wanted) : item)];
        var made = Array.CreateInstance(ItemType(items), all.Length);
        all.CopyTo(made, 0);
        return made;
    }

    private static Type ItemType(IEnumerable items) => items.GetType().GetInterfaces()
        .Single(one => one.IsGenericType && one.GetGenericTypeDefinition() == typeof(IEnumerable<>)).GetGenericArguments()[0];

    private static Measure MeasureOf(Type type, string field) => FieldRanges.Of(type, field).Select(range => range.Measure).FirstOrDefault();

    private static double Number(double value, Measure measure, UnitSystem old, UnitSystem wanted) => measure switch
    {
        Measure.Length => wanted.Length(old.ToMm(value)),
        Measure.Force => wanted.Force(old.ToN(value)),
        Measure.Stress => wanted.Stress(old.ToMpa(value)),
        Measure.Density => wanted.Density(old.ToKgPerCubicMetre(value)),
        _ => value,
    };
}
