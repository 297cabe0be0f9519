using FormApi.Features.Forms;
using FormApi.Http.Units;
using Forming.Plans.Notes;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>What to do after strips.</summary>
internal static class StripSteps
{
    /// <summary>To plan with what they taught, and to bend another one.</summary>
    /// <param name="lesson">What was learnt.</param>
    /// <param name="kind">How another strip is bent.</param>
    /// <param name="asked">Where it is sent.</param>
    /// <param name="units">The caller's units.</param>
    public static NextStepResult[] Of(StripLesson lesson, NextStepKind kind, string asked, UnitSystem units)
    {
        var bend = new NextStepResult(
            kind, units.Wording.Of(lesson.Next.Text), asked, Strip: NextStripResult.From(lesson.Next, units));
        if (lesson.Planning is not { } planning)
            return [bend];
        var plan = new NextStepResult(NextStepKind.PlanForm, units.Wording.Of(planning), "/v1/forms");
        return lesson.IsEnough ? [plan, bend] : [bend, plan];
    }
}
