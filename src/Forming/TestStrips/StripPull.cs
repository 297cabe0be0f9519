using Forming.Learning;
using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>What a strip does by ln(yield factor) and ln(n/nominal n) of its sheet.</summary>
internal abstract class StripPull
{
    /// <summary>No sheet is so much stronger than its grade, as ln(yield factor).</summary>
    protected const double MostLnFactor = 3;

    /// <summary>Curvature of the mid surface under load, a mean over facets [1/mm].</summary>
    public abstract double LoadedCurvature { get; }

    /// <summary>Share of plane stress.</summary>
    public required double PlaneStress { get; init; }

    /// <summary>Bending law of the strip's sheet as the grade has it.</summary>
    public required BendingLaw Law { get; init; }

    /// <summary>How far the form turns the strip under load [rad]; null round a bar, where nobody says how far it was pulled.</summary>
    public abstract double? LoadedSweep { get; }

    /// <summary>From this ln(yield factor) on nothing of the bend stays, or it is not followed.</summary>
    public abstract double LnFlat { get; }

    /// <summary>Finished over loaded curvature; 0 or less where nothing stays.</summary>
    public abstract double Factor(double lnFactor, double lnHardening = 0);

    /// <summary>Finished sweep [rad].</summary>
    public abstract double Sweep(double lnFactor, double lnHardening = 0);

    /// <summary>Whether the strip was followed with such a sheet.</summary>
    public abstract bool Covers(double lnFactor);

    /// <summary>ln of finished over formed mid-surface radius; infinite where nothing of the bend stays.</summary>
    public double Opening(double lnFactor, double lnHardening = 0)
    {
        var factor = Factor(lnFactor, lnHardening);
        return factor > 0 ? -Math.Log(factor) : double.PositiveInfinity;
    }

    /// <summary>A strip round a bar, in pure bending.</summary>
    /// <param name="sheet">Its sheet.</param>
    /// <param name="radiusMm">Radius of the bar [mm].</param>
    /// <param name="widthMm">Its width [mm]; null takes it as wide.</param>
    public static StripPull Round(Sheet sheet, double radiusMm, double? widthMm)
    {
        var loaded = 1 / (radiusMm + (sheet.ThicknessMm / 2));
        var share = ShareOf(sheet, loaded, widthMm);
        return new RoundPull(loaded) { PlaneStress = share, Law = BendingLaw.OfStrip(sheet, share) };
    }

    /// <summary>A strip over a faceted form, on simulated pulls.</summary>
    /// <param name="sheet">Its sheet.</param>
    /// <param name="bar">The form.</param>
    /// <param name="widthMm">Its width [mm]; null takes it as wide.</param>
    /// <param name="hardeningStep">How far n is varied, as ln(n).</param>
    /// <param name="work">What the pulls may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>Null where too few of the pulls can be followed.</returns>
    public static StripPull? Over(
        Sheet sheet, FacetedBar bar, double? widthMm, double hardeningStep, PullWork work, CancellationToken cancellation)
    {
        var places = FoldPlaces.Of(bar.Form, bar.Ends, wanted: null, sheet.ThicknessMm);
        var middle = MiddleCurvature(places, bar.Form.MiddleFolds);
        var share = ShareOf(sheet, middle, widthMm);
        var law = BendingLaw.OfStrip(sheet, share);
        var setup = bar.SetupOver(places);
        return YieldTable.Of(Pulled, hardeningStep, cancellation) is { } table
            ? new FacetedPull(table, middle, places.Sweep) { PlaneStress = share, Law = law }
            : null;

        double[]? Pulled(double lnFactor, double lnHardening)
        {
            var own = law.Stronger(Math.Exp(lnFactor));
            var wrapped = PanelWrap.Compute(
                bar.Form, lnHardening == 0 ? own : own.Hardened(Math.Exp(lnHardening)), setup, work, cancellation);
            return wrapped is { End: WrapEnd.Complete, MeanCurvature: > 0 }
                ? [wrapped.MeanCurvature / middle, wrapped.Sweep.Radians]
                : null;
        }
    }

    private static double ShareOf(Sheet sheet, double loaded, double? widthMm) => widthMm is { } width
        ? StripWidth.PlaneStress(width, 1 / loaded, sheet.ThicknessMm, sheet.Material.PoissonRatio)
        : 0;

    private static double MiddleCurvature(FoldPlaces places, (int From, int To) middle)
    {
        double turn = 0;
        for (var j = middle.From; j < middle.To; j++)
            turn += places.Curvatures[j] * (places.AlongMm[j + 1] - places.AlongMm[j]);
        return turn / (places.AlongMm[middle.To] - places.AlongMm[middle.From]);
    }

    private sealed class RoundPull(double loaded) : StripPull
    {
        public override double LoadedCurvature => loaded;

        public override double? LoadedSweep => null;

        public override double LnFlat => Math.Log(loaded / Law.YieldCurvature);

        public override double Factor(double lnFactor, double lnHardening = 0)
        {
            var law = Law.Stronger(Math.Exp(lnFactor));
            return (lnHardening == 0 ? law : law.Hardened(Math.Exp(lnHardening))).Release(loaded) / loaded;
        }

        public override double Sweep(double lnFactor, double lnHardening = 0) =>
            throw new InvalidOperationException("Nobody says how far a strip is pulled round a bar.");

        public override bool Covers(double lnFactor) => true;
    }

    private sealed class FacetedPull(YieldTable table, double loaded, double loadedSweep) : StripPull
    {
        public override double LoadedCurvature => loaded;

        public override double? LoadedSweep => loadedSweep;

        public override double LnFlat { get; } = table.At(0, MostLnFactor) > 0
            ? MostLnFactor
            : Bisection.Solve(at => -table.At(0, at), table.Low, MostLnFactor);

        public override double Factor(double lnFactor, double lnHardening = 0) => table.At(0, lnFactor, lnHardening);

        public override double Sweep(double lnFactor, double lnHardening = 0) => table.At(1, lnFactor, lnHardening);

        public override bool Covers(double lnFactor) => table.Covers(lnFactor);
    }
}
