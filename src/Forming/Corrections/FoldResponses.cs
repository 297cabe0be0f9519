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
        for (var i = 0; i < folds.Length; i++)
        {
            var least = rules.Direction == CorrectionDirection.CloseOnly
                ? 0
                : Math.Max(rules.LeastSteps, (int)Math.Ceiling((CorrectionTrial.LeastFold - form.FoldAngles[i]) / rules.Step.Radians));
            var most = Math.Min(rules.MostSteps, (int)Math.Floor((AsBuilt.MostFold.Radians - form.FoldAngles[i]) / rules.Step.Radians));
            (least, most) = (Math.Min(0, least), Math.Max(0, most));
            folds[i] = new(
                least,
                most,
                most > 0 ? At(i, most) : null,
                least < 0 ? At(i, least) : most > 1 ? At(i, (most + 1) / 2) : null,
                least < 0 ? least : (most + 1) / 2);
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

    private readonly record struct Response(int Least, int Most, PanelOff? AtMost, PanelOff? AtOther, int Other)
    {
        public bool IsKnown => AtMost is not null || AtOther is not null;

        // Through 0 at no step.
        public PanelOff At(double steps)
        {
            if (steps == 0)
                return default;
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
