using Forming.Plans;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>What to know about the values of an estimate.</summary>
internal static class EstimateNotes
{
    /// <summary>The notes that a job calls for.</summary>
    /// <param name="job">The job.</param>
    /// <param name="estimate">Its values.</param>
    public static IReadOnlyList<ShopNote> Of(EstimateJob job, Estimate estimate)
    {
        var notes = new List<ShopNote>(12);
        if (estimate.Verdict == PlanVerdict.CannotBeMade)
            notes.Add(new("cannot-be-made", $"The form cannot be made as planned ({string.Join(", ", estimate.Failed.Select(check => check.Id))}): the estimate is for the work it would take, not an offer."));
        notes.Add(new("minutes-of-one-person", $"Minutes are of one person: two people for one minute are two."));
        var crew = estimate.Crew;
        if (crew.UsesWinch)
            notes.Add(new("winch", $"A winch or press rated for the pull of about {Figure.Force(crew.ForceN)} is counted, rigged for every pull; nobody stands in line with the cable."));
        else if (crew.People > 1)
            notes.Add(new("crew", $"{crew.People} people lay up, clamp and pull (about {Figure.Force(crew.ForceN)}): the minutes of all of them count."));
        if (estimate.Trials > 0)
            notes.Add(new("trials", $"Trial panels are made before the first good one, {estimate.Trials} counted, their labour and sheet in every price: the first pull shows what the stop and the sheet really do."));
        if (estimate.Quantities.Ribs > 0)
            notes.Add(new("ribs", $"Ribs are cut from plate or plywood at hand: their time is counted, their material is not."));
        if (estimate.Prices.Any(row => row.IsMinimum))
            notes.Add(new("minimum-charge", $"A price is the minimum charge where the work costs less."));
        notes.Add(new("all-together", $"Low and high take every element and every group to its bound at once: they are bounds, not a statement of chance."));
        if (estimate.Assumptions.Any(assumption => assumption.IsNominal))
            notes.Add(new("nominal-money", $"Labour or sheet has a nominal price without a currency: costs based on it only compare one plan with another."));
        if (job.Pieces.Max() > 1)
            notes.Add(new("one-form", $"One set of forms is taken to serve the whole batch: folds open under repeated pulls, so measure it again on the way."));
        if (estimate.Quantities.Forms > 1)
            notes.Add(new("opposite-hand", $"The second half needs an opposite-hand form: two forms are counted, from the same strips and in one set-up of the brake."));
        if (estimate.Comparisons is [{ Hits: { } hits }, ..])
            notes.Add(new("bumping", $"Bumped directly, the panel shows each of its {hits.Count} hits, {Figure.Length(hits.PitchMm)} apart, and needs a press brake as long as the panel is wide; the time to learn its springback is in the trial panels."));
        if (job.Learning.Learns)
        {
            notes.Add(job.Learning.Model == LearningModel.Unit
                ? new("learning-form", $"The rate is taken for the time of the n-th panel (Crawford's form). One found for the mean of the first n (Wright's) belongs to the model cumulative-average, which gives less.")
                : new("learning-form", $"The rate is taken for the mean time of the first n panels (Wright's form). One found for the n-th panel (Crawford's) belongs to the model unit, which gives more."));
            notes.Add(new("first-panel", $"The times of a panel are taken for those of the first one: give the times of a practised hand only without learning."));
        }

        return notes;
    }
}
