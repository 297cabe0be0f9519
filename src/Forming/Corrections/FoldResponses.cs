using Forming.Inspection;
using Forming.Prediction;

namespace Forming.Corrections;

/// <summary>What each fold alone does to the panel when its angle changes by steps of the stop.</summary>
/// <remarks>
/// A parabola a fold through the panel as it is and through pulls over the form with that fold changed. Folds changed together are taken
/// as the sum of what they do alone: whoever uses it pulls the panel over what it proposes.
/// </remarks>
internal sealed class FoldResponses
{
    /// <summary>Of more folds than this some stand for their neighbours too.</summary>
    private const int MostProbed = 30;

    private readonly Response[] _folds;
    private readonly PanelOff[][] _table;

    private FoldResponses(PanelOff asIs, Response[] folds)
    {
        (AsIs, _folds) = (asIs, folds);
        _table = [.. folds.Select(fold => Enumerable.Range(fold.Least, fold.Most - fold.Least + 1).Select(k => fold.At(k)).ToArray())];
    }

    /// <summary>How far the panel is off without a correction.</summary>
    public PanelOff AsIs { get; }

    /// <summary>Number of folds.</summary>
    public int Count => _folds.Length;

    /// <summary>Pulls over the form with one fold changed, fold by fold.</summary>
    /// <param name="trial">Pulls the panel over a corrected form.</param>
    /// <param name="asIs">The panel over the form as it stands.</param>
    /// <param name="form">The form.</param>
    /// <param name="rules">How folds may be corrected.</param>
    public static FoldResponses Of(CorrectionTrial trial, PanelOff asIs, StandingForm form, FoldRules rules)
    {
        var folds = new Response[form.Folds];
        var known = new List<int>();
        // Folds side by side do much the same: of many some are pulled, and the others taken between them.
        var isMany = form.Folds > MostProbed;
        for (var i = 0; i < folds.Length; i++)
        {
            var (least, most) = BoundsOf(form.FoldAngles[i], rules);
            folds[i] = new(least, most, null, null, 0);
            if (isMany && !IsProbed(i, form.Folds))
                continue;
            known.Add(i);
            var other = least < 0 ? least : (most + 1) / 2;
            // Half of the pulls: to the side that brings the panel in.
            var closes = asIs.Sweep < 0 || least == 0;
            folds[i] = new(
                least,
                most,
                most > 0 && (!isMany || closes) ? At(i, most) : null,
                other != 0 && other != most && (!isMany || !closes) ? At(i, other) : null,
                other);
        }

        for (var k = 1; k < known.Count; k++)
        {
            var (one, two) = (known[k - 1], known[k]);
            for (var i = one + 1; i < two; i++)
                folds[i] = folds[i] with { Between = (folds[one], folds[two], (double)(i - one) / (two - one)) };
        }

        return new(asIs, folds);

        PanelOff? At(int fold, int steps)
        {
            var all = new int[form.Folds];
            all[fold] = steps;
            return trial.Of(all)?.Off is { } off ? off - asIs : null;
        }
    }

    /// <summary>Fewest steps at a fold.</summary>
    /// <param name="fold">Its index.</param>
    public int Least(int fold) => _folds[fold].Least;

    /// <summary>Most steps at a fold.</summary>
    /// <param name="fold">Its index.</param>
    public int Most(int fold) => _folds[fold].Most;

    /// <summary>What a fold changes.</summary>
    /// <param name="fold">Its index.</param>
    /// <param name="steps">Steps of the stop, within its bounds.</param>
    public PanelOff At(int fold, int steps) => _table[fold][steps - _folds[fold].Least];

    /// <summary>Whether the panel could be followed over the form with the fold changed.</summary>
    /// <param name="fold">Its index.</param>
    public bool IsKnown(int fold) => _folds[fold].IsKnown;

    /// <summary>How far the panel would be off.</summary>
    /// <param name="steps">[m] steps of the stop a fold.</param>
    public PanelOff Sum(IReadOnlyList<int> steps)
    {
        var sum = AsIs;
        for (var i = 0; i < steps.Count; i++)
        {
            if (steps[i] != 0)
                sum += At(i, steps[i]);
        }

        return sum;
    }

    /// <summary>The steps of a fold that change the sweep into a band.</summary>
    /// <param name="fold">Its index.</param>
    /// <param name="low">Low end of the change [rad].</param>
    /// <param name="high">High end of the change [rad].</param>
    /// <remarks>Closing a fold closes the panel.</remarks>
    public (int From, int To) Within(int fold, double low, double high)
    {
        var (from, to) = (Least(fold), Most(fold));
        while (from <= to && At(fold, from).Sweep < low)
            from++;
        while (to >= from && At(fold, to).Sweep > high)
            to--;
        return (from, to);
    }

    // The first, the last, and others at even distances between.
    private static bool IsProbed(int fold, int folds)
    {
        return fold == 0 || fold == folds - 1 || Nth(fold) != Nth(fold - 1);

        long Nth(int i) => (long)i * (MostProbed - 1) / (folds - 1);
    }

    private static (int Least, int Most) BoundsOf(double angle, FoldRules rules)
    {
        var opened = Math.Ceiling((CorrectionTrial.LeastFold - angle) / rules.Step.Radians);
        var closed = Math.Floor((AsBuilt.MostFold.Radians - angle) / rules.Step.Radians);
        return ((int)Math.Min(0, Math.Max(rules.LeastSteps, opened)), (int)Math.Max(0, Math.Min(rules.MostSteps, closed)));
    }

    private sealed record Response(int Least, int Most, PanelOff? AtMost, PanelOff? AtOther, int Other)
    {
        public bool IsKnown => AtMost is not null || AtOther is not null;

        /// <summary>The folds that stand for it, and how near it is to the second.</summary>
        public (Response One, Response Two, double Share)? Between { get; init; }

        // Through 0 at no step.
        public PanelOff At(double steps)
        {
            if (steps == 0)
                return default;
            if (Between is var (one, two, share))
                return ((1 - share) * one.At(steps)) + (share * two.At(steps));
            if (AtMost is { } most && AtOther is { } other && Other != Most)
            {
                double a = Most, b = Other;
                return (steps * (steps - b) / (a * (a - b)) * most) + (steps * (steps - a) / (b * (b - a)) * other);
            }

            if (AtMost is { } alone)
                return steps / Most * alone;
            return AtOther is { } only ? steps / Other * only : default;
        }
    }
}

/// <summary>How far a panel is off what is wanted; also a change of it.</summary>
/// <param name="Sweep">Sweep past the wanted one [rad].</param>
/// <param name="LnRadius">Logarithm of radius over wanted radius; 0 where one of them is flat.</param>
internal readonly record struct PanelOff(double Sweep, double LnRadius)
{
    public static PanelOff operator +(PanelOff a, PanelOff b) => new(a.Sweep + b.Sweep, a.LnRadius + b.LnRadius);

    public static PanelOff operator -(PanelOff a, PanelOff b) => new(a.Sweep - b.Sweep, a.LnRadius - b.LnRadius);

    public static PanelOff operator *(double by, PanelOff a) => new(by * a.Sweep, by * a.LnRadius);

    /// <summary>Of a panel that was let go.</summary>
    /// <param name="shape">The panel.</param>
    public static PanelOff Of(PredictedShape shape) => new(
        shape.SweepMiss.Radians,
        shape is { RadiusMm: { } radius, WantedRadiusMm: { } wanted } ? Math.Log(radius / wanted) : 0);
}
