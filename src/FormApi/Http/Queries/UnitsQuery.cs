using System.Diagnostics.CodeAnalysis;
using FormApi.Http.Problems;
using FormApi.Http.Units;

namespace FormApi.Http.Queries;

/// <summary>The <c>units</c> of a query: mm unless said otherwise.</summary>
internal static class UnitsQuery
{
    /// <summary>Reads the units of a query.</summary>
    /// <param name="given">What the query says, or null.</param>
    /// <param name="units">The units, or null.</param>
    /// <param name="problem">The problem, or null.</param>
    /// <returns>Whether the query names units that exist.</returns>
    public static bool TryRead(
        string? given, [NotNullWhen(true)] out UnitSystem? units, [NotNullWhen(false)] out ProblemResult? problem)
    {
        units = given switch
        {
            null or "mm" => UnitSystem.Mm,
            "in" => UnitSystem.Inch,
            _ => null,
        };
        problem = units is null
            ? new(ProblemKinds.BadRequest, "The query's units are mm or in.", [new("", ProblemKinds.UnknownValue.Code, "units is not known.", null, "mm, in")])
            : null;
        return units is not null;
    }
}
