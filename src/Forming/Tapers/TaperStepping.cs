using Forming.Contact;
using Forming.Facets;
using Forming.Folds;
using Forming.Results;
using Forming.Wrapping;
using MathNet.Numerics.RootFinding;

namespace Forming.Tapers;

/// <summary>Puts the folds of a taper on its rulings: the stepping rules of a straight form, held to the stricter end everywhere.</summary>
internal sealed class TaperStepping
{
    private readonly TaperWrap _wrap;
    private readonly Stepping _stepping;
    private readonly FoldShape _fold;
    private readonly FacetJudge _near;
    private readonly FacetJudge _far;
    private readonly double _minFacet;
    private readonly double _panelThickness;
    private readonly CancellationToken _cancellation;
    private readonly Func<double, double> _running;
    private readonly double _total;

    public TaperStepping(
        TaperWrap wrap,
        Stepping stepping,
        FoldShape fold,
        FacetJudge near,
        FacetJudge far,
        double minFacet,
        double panelThickness,
        CancellationToken cancellation = default)
    {
        _cancellation = cancellation;
        _wrap = wrap;
        _stepping = stepping;
        _fold = fold;
        _near = near;
        _far = far;
        _minFacet = minFacet;
        _panelThickness = panelThickness;
        _running = RunningIntegral();
        _total = _running(Sweep);
    }

    private double Sweep => _wrap.Formed.Panel.Sweep;

    /// <summary>The folds, by the rule and what the caller fixed.</summary>
    /// <exception cref="NoSolutionException">
    /// <c>form.fold-radius-too-large</c>, <c>stepping.too-few-folds</c>, <c>stepping.too-many-folds</c>, <c>stepping.fold-too-sharp</c>.
    /// </exception>
    public TaperFolds Solve()
    {
        FoldsFit();
        if ((_stepping.FoldAngle?.Radians ?? _stepping.SpacingMm) is { } step)
            return Checked(WithStep(step));
        if (_stepping.Folds is { } folds)
            return Checked(WithSteps(StepsOf(folds)));
        var fewest = StepSearch.Smallest(Guess(), IsSmoothWith);
        var smooth = WithSteps(fewest);
        if (!IsFoldable(smooth))
            return WithSteps(StepSearch.Largest(fewest, fewer => IsFoldable(WithSteps(fewer))));
        if (!_wrap.IsUneven)
            return smooth;

        var forGood = WithSteps(
            StepSearch.SmallestForGood(fewest, steps => WithSteps(steps) is var folded && (IsSmooth(folded) || !IsFoldable(folded))));
        return IsFoldable(forGood) ? forGood : smooth;
    }

    /// <summary>How many folds the finish asks for, whatever the caller fixed and the brake can fold.</summary>
    public int FoldsWanted()
    {
        var fewest = StepSearch.Smallest(Guess(), IsSmoothWith);
        return (_wrap.IsUneven ? StepSearch.SmallestForGood(fewest, IsSmoothWith) : fewest) + (_stepping.Ends == SteppingEnds.Half ? 1 : 0);
    }

    /// <summary>Facet after a fold on the contact side, mold line to mold line, at one end [mm].</summary>
    /// <param name="folds">The folds.</param>
    /// <param name="index">Index of the fold.</param>
    /// <param name="isFar">Whether at the far end.</param>
    public double Facet(TaperFolds folds, int index, bool isFar) =>
        folds.Straight(index, isFar) + _fold.Setback(folds.Angles[index]) + _fold.Setback(folds.Angles[index + 1]);

    /// <summary>Inside radius of the panel at a fold, near end [mm].</summary>
    /// <param name="folds">The folds.</param>
    /// <param name="index">Index of the fold.</param>
    public double RadiusMm(TaperFolds folds, int index) => _wrap.PlaceAt(folds.Turns[index], isFar: false).RadiusMm(_panelThickness);

    /// <summary>What a facet leaves in the finished panel at one end.</summary>
    /// <param name="folds">The folds.</param>
    /// <param name="index">Index of the fold before it.</param>
    /// <param name="isFar">Whether at the far end.</param>
    public Ripple RippleOf(TaperFolds folds, int index, bool isFar) => (isFar ? _far : _near).RippleOf(
        Facet(folds, index, isFar),
        _wrap.PlaceAt(folds.Turns[index], isFar),
        _wrap.TightestBetween(folds.Turns[index], folds.Turns[index + 1], isFar),
        index == 0);

    /// <summary>How much of the facets will show, looked at from both ends.</summary>
    /// <param name="folds">The folds.</param>
    public PrintThroughResult PrintThroughOf(TaperFolds folds) =>
        PrintThroughReport.Of(FacetsOf(folds), _wrap.Tightest, _near, _wrap.LongestLeverMm(1), folds.Angles.Length == 1);

    private IEnumerable<FacetUnderPanel> FacetsOf(TaperFolds folds)
    {
        foreach (var isFar in (bool[])[false, true])
        {
            for (var j = 0; j + 1 < folds.Angles.Length; j++)
            {
                var tightest = _wrap.TightestBetween(folds.Turns[j], folds.Turns[j + 1], isFar);
                yield return new(isFar ? _far : _near, Facet(folds, j, isFar), _wrap.PlaceAt(folds.Turns[j], isFar), tightest, j == 0);
            }
        }
    }

    /// <summary>Widest facet on either end [mm]; 0 where a single fold leaves none.</summary>
    /// <param name="folds">The folds.</param>
    public double WidestFacetMm(TaperFolds folds)
    {
        var widest = 0.0;
        for (var j = 0; j + 1 < folds.Angles.Length; j++)
            widest = Math.Max(widest, Math.Max(Facet(folds, j, false), Facet(folds, j, true)));
        return widest;
    }

    private bool IsSmoothWith(int steps) => IsSmooth(WithSteps(steps));

    private int StepsOf(int folds)
    {
        var steps = folds - (_stepping.Ends == SteppingEnds.Half ? 1 : 0);
        return steps > 0
            ? steps
            : throw new NoSolutionException(
                "stepping.too-few-folds", "form.stepping.folds", $"{folds} folds do not serve a curved stretch with these ends", $"at least {folds + 1 - steps} folds");
    }

    private TaperFolds WithSteps(int steps) => At(StepSearch.Spread(_stepping.Ends, steps, _total), Sweep);

    // A taper is not drawn on past its end rulings, so a fixed step leaves it short and never over.
    private TaperFolds WithStep(double step)
    {
        var steps = Math.Max(1, Math.Floor((_total / step) + 1e-9));
        if (steps > StepSearch.MostSteps)
            throw StepSearch.TooMany();
        var end = Math.Min(_total, steps * step);
        return At(StepSearch.Spread(_stepping.Ends, (int)steps, end), TurnAt(end));
    }

    private TaperFolds At(double[] values, double endTurn) =>
        TaperFolds.Through(_wrap.Formed, Array.ConvertAll(values, TurnAt), endTurn, _fold, _panelThickness);

    private double TurnAt(double value)
    {
        _cancellation.ThrowIfCancellationRequested();
        if (value <= 0)
            return 0;
        return value >= _total ? Sweep : Brent.FindRoot(turn => _running(turn) - value, 0, Sweep, 1e-13 * _total, 200);
    }

    private Func<double, double> RunningIntegral()
    {
        var formed = _wrap.Formed;
        var inwards = ((1 - _fold.NeutralFactor) * _fold.ThicknessMm) + (_panelThickness / 2);
        return _stepping.Rule switch
        {
            SteppingRule.EqualAngle => formed.Turn.At,
            SteppingRule.EqualSpacing => turn =>
                ((formed.NearWidth.At(turn) + formed.FarWidth.At(turn)) / 2) - (inwards * formed.Turn.At(turn)),
            _ => ByAllowedFacet(),
        };
    }

    // The denser of both ends' 1/c_allow, piecewise even; the first facet by its own stricter limit.
    private Func<double, double> ByAllowedFacet()
    {
        const int samples = 96;
        var turns = new double[samples + 1];
        var folds = new double[samples + 1];
        for (var i = 1; i <= samples; i++)
        {
            turns[i] = Sweep * i / samples;
            var isFirst = folds[i - 1] < 1;
            folds[i] = folds[i - 1] + Math.Max(
                FoldsBetween(turns[i - 1], turns[i], isFirst, false), FoldsBetween(turns[i - 1], turns[i], isFirst, true));
        }

        return turn =>
        {
            var i = Math.Clamp((int)(turn / Sweep * samples), 0, samples - 1);
            return folds[i] + ((folds[i + 1] - folds[i]) * (turn - turns[i]) / (turns[i + 1] - turns[i]));
        };
    }

    private double FoldsBetween(double from, double to, bool isFirst, bool isFar)
    {
        ContactPoint start = _wrap.PlaceAt(from, isFar), end = _wrap.PlaceAt(to, isFar);
        var contact = end.MidMm - start.MidMm - (_panelThickness / 2 * (end.Turn - start.Turn));
        var allowed = (isFar ? _far : _near).AllowedFacet(start, _wrap.TightestBetween(from, to, isFar), isFirst);
        return contact / Math.Min(allowed, isFar ? _wrap.FarMidMm : _wrap.NearMidMm);
    }

    private double Guess()
    {
        double least = 1;
        foreach (var isFar in (bool[])[false, true])
        {
            ContactPoint start = _wrap.PlaceAt(0, isFar), end = _wrap.PlaceAt(Sweep, isFar);
            var judge = isFar ? _far : _near;
            var allowed = Math.Min(judge.AllowedFacet(start, start.State, true), judge.AllowedFacet(end, end.State, false));
            least = Math.Max(least, Math.Ceiling(end.MidMm / Math.Min(allowed, _stepping.MaxFacetMm ?? allowed)));
        }

        return least;
    }

    private bool IsFoldable(TaperFolds folds)
    {
        for (var j = 0; j + 1 < folds.Angles.Length; j++)
        {
            if (Math.Min(Facet(folds, j, false), Facet(folds, j, true)) < _minFacet)
                return false;
        }

        return true;
    }

    private bool IsSmooth(TaperFolds folds)
    {
        if (folds.Angles.Length == 1 || !(folds.Angles.Max() <= StepSearch.MostChosenAngle))
            return false;
        for (var j = 0; j + 1 < folds.Angles.Length; j++)
        {
            if (Math.Max(Facet(folds, j, false), Facet(folds, j, true)) > (_stepping.MaxFacetMm ?? double.PositiveInfinity))
                return false;
            if (!RippleOf(folds, j, false).Passes(_near.Finish) || !RippleOf(folds, j, true).Passes(_far.Finish))
                return false;
        }

        return true;
    }

    private void FoldsFit()
    {
        var tightest = _wrap.Near.Concat(_wrap.Far).Min(place => place.RadiusMm(_panelThickness));
        if (!(tightest > _fold.OuterRadiusMm))
        {
            throw new NoSolutionException(
                "form.fold-radius-too-large",
                "form.foldRadius",
                $"{Figure.Length(tightest)} is sharper than a fold of this form ({Figure.Length(_fold.OuterRadiusMm)} outside): bend the panel directly in the brake, or fold the form sharper",
                $"a smaller fold radius or a thinner form");
        }
    }

    private static TaperFolds Checked(TaperFolds folds) =>
        folds.Angles.Max() < StepSearch.MostAngle && folds.Angles.Min() > 0 ? folds : throw StepSearch.TooSharp(folds.Angles.Max());
}
