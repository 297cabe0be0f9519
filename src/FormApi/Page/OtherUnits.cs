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
/// <param name="old">The units it is in.</param>
/// <param name="wanted">The units it is to be in.</param>
internal sealed class OtherUnits(UnitSystem old, UnitSystem wanted)
{
    /// <summary>The same job in other units.</summary>
    /// <param name="request">The job.</param>
    /// <param name="to">The units wanted.</param>
    public static FormRequest Of(FormRequest request, LengthUnit to) => request.Units == to
        ? request
        : (FormRequest)new OtherUnits(UnitSystem.Of(request.Units), UnitSystem.Of(to)).Record(request) with { Units = to };

    private object Record(object record)
    {
        // The step of a tape is in the tape's own unit, whatever the request is in.
        if (record is MarksInput marks)
            return marks with { Tape = marks.Tape ?? (marks.Resolution is null ? null : old.Unit) };
        var type = record.GetType();
        var constructor = type.GetConstructors(BindingFlags.Instance | BindingFlags.Public).MaxBy(one => one.GetParameters().Length)!;
        return constructor.Invoke([.. constructor.GetParameters().Select(parameter => Value(type, parameter.Name!, record))]);
    }

    private object? Value(Type type, string name, object record) => type.GetProperty(name)!.GetValue(record) switch
    {
        double number => Number(number, MeasureOf(type, JsonNamingPolicy.CamelCase.ConvertName(name))),
        IReadOnlyList<Pair> points => points.Select(point => new Pair(Length(point.First), Length(point.Second))).ToArray(),
        string text => text,
        null => null,
        IEnumerable items => Items(items),
        var value => Item(value),
    };

    private Array Items(IEnumerable items)
    {
        object[] all = [.. items.Cast<object>().Select(Item)];
        var made = Array.CreateInstance(ItemType(items), all.Length);
        all.CopyTo(made, 0);
        return made;
    }

    private object Item(object value) => value.GetType().IsClass && value is not string ? Record(value) : value;

    private static Type ItemType(IEnumerable items) => items.GetType().GetInterfaces()
        .Single(one => one.IsGenericType && one.GetGenericTypeDefinition() == typeof(IEnumerable<>)).GetGenericArguments()[0];

    private static Measure MeasureOf(Type type, string field) =>
        FieldRanges.Of(type, field).Select(range => range.Measure).FirstOrDefault();

    private double Length(double value) => wanted.Length(old.ToMm(value));

    private double Number(double value, Measure measure) => measure switch
    {
        Measure.Length => Length(value),
        Measure.Force => wanted.Force(old.ToN(value)),
        Measure.Stress => wanted.Stress(old.ToMpa(value)),
        Measure.Density => wanted.Density(old.ToKgPerCubicMetre(value)),
        _ => value,
    };
}
