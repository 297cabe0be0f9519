using Forming.Checks;
using Forming.Jobs;
using Forming.Plans.Checks;
using Forming.Results;

namespace Forming.Plans.Remedies;

/// <summary>Who can pull what one person cannot, where no job is planned: only the check itself reads it.</summary>
internal static class HandForceRemedy
{
    /// <summary>The check with its remedy, where it did not pass.</summary>
    /// <param name="check">The check of the pull.</param>
    /// <param name="by">Who pulls.</param>
    /// <param name="units">The caller's units.</param>
    public static Check Added(Check check, PullBy by, CallerUnits units)
    {
        if (check.Verdict == Verdict.Pass)
            return check;
        foreach (var candidate in For(check.Value!.Value, by, units))
        {
            for (var i = candidate.Start; i < candidate.Count; i++)
            {
                if (PullChecks.HandForce(check.Value.Value, ByOf(candidate.At(i)[0], units)).Verdict == Verdict.Pass)
                    return check with { Remedy = new(candidate.TextAt(i), candidate.At(i)) };
            }
        }

        return check;
    }

    /// <summary>Enough people, else a machine.</summary>
    /// <param name="forceN">The pull [N].</param>
    /// <param name="by">Who pulls.</param>
    /// <param name="units">The caller's units.</param>
    public static IEnumerable<RemedyCandidate> For(double forceN, PullBy by, CallerUnits units)
    {
        var people = Math.Ceiling(forceN / WorkingLimits.HandForceN);
        if (by.RatedN is null && people <= PullBy.MostPeople)
            yield return People(RemedyValues.Whole(by.People + 1, PullBy.MostPeople, (int)people));
        yield return Rated(
            RemedyValues.Up(units.FromN(by.RatedN ?? (forceN / 2)), units.FromN(forceN), units.FromN(1e9), RemedyValues.Load), units);
    }

    /// <summary>More people.</summary>
    /// <param name="values">How many.</param>
    public static RemedyCandidate People(RemedyValues values) => RemedyCandidate.Through(
        values, value => [new(JobField.PullByPeople, value)], value => $"pull and lift with {value:0} people, one of them giving the word");

    /// <summary>A machine in place of people.</summary>
    /// <param name="values">What it is rated for, in the caller's unit.</param>
    /// <param name="units">The caller's units.</param>
    public static RemedyCandidate Rated(RemedyValues values, CallerUnits units) => RemedyCandidate.Through(
        values,
        value => [new(JobField.PullByRated, value)],
        value => $"use a winch, press or hoist rated for at least {Figure.Force(units.ToN(value))}, on a stiff bar along the whole edge, nobody in line with the cable");

    private static PullBy ByOf(JobChange change, CallerUnits units) =>
        change.Field == JobField.PullByPeople ? new((int)change.Number!.Value) : new(1, units.ToN(change.Number!.Value));
}
