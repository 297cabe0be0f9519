using Forming.Curves;

namespace Forming.Prediction;

/// <summary>The strips by which a panel is looked at while it is pulled: one for parallel folds, several along a taper's.</summary>
internal sealed class PulledStrips
{
    private readonly PredictionJob _job;
    private readonly RuledStrips? _ruled;
    private readonly StandingForm[] _forms;
    private readonly double[] _beyondMm; // from the last fold to where the lever counts from
    private readonly double[][] _widths;
    private readonly double _clampGapMm;

    private PulledStrips(PredictionJob job, FinishedCurve finished, WantedCurve wanted, FoldPlaces middle, double clampGapMm)
    {
        (_job, _ruled, _clampGapMm) = (job, finished.Strips, clampGapMm);
        _forms = _ruled is null ? [job.Form] : [.. job.Strips ?? _ruled.Places.Select(place => Under(place, _ruled, job.Form, middle))];
        var thickness = job.Panel.Sheet.ThicknessMm;
        FoldPlaces[] places = [.. _forms.Select(form => form == job.Form ? middle : FoldPlaces.Of(form, job.Ends, wanted, thickness))];
        _widths = [.. places.Select(own => own.AlongMm.Skip(1).Zip(own.AlongMm, (to, from) => to - from).ToArray())];
        _beyondMm =
        [
            .. places.Select((own, p) => (job.IsStanding ? own.EndMm : WidthShareOf(p) * wanted.EndMm) - own.AlongMm[^1]),
        ];

        double WidthShareOf(int strip) => _ruled?.WidthBetween(_ruled.Places[strip], 0, _ruled.LengthMm) ?? 1;
    }

    /// <summary>Looks at a job.</summary>
    /// <param name="job">Panel and form.</param>
    /// <param name="finished">The finished curve on the mid surface, a taper's middle strip.</param>
    /// <param name="wanted">The same as it is wanted.</param>
    /// <param name="middle">Where the folds meet it.</param>
    /// <param name="clampGapMm">Clamp behind the first fold's tangent point [mm].</param>
    public static PulledStrips Of(PredictionJob job, FinishedCurve finished, WantedCurve wanted, FoldPlaces middle, double clampGapMm) =>
        new(job, finished, wanted, middle, clampGapMm);

    /// <summary>The strips, pulled with a lever.</summary>
    /// <param name="leverMm">Hand to the end of the curve [mm].</param>
    public FormStrip[] At(double leverMm)
    {
        WrapSetup[] setups = [.. _beyondMm.Select(beyond => new WrapSetup(leverMm + beyond, _clampGapMm, _job.Beam))];
        return _forms.Length == 1
            ? [FormStrip.Only(_forms[0], setups[0]) with { Before = _job.PulledBefore }]
            : FormStrip.Along(_forms, _ruled!.Places, _widths, setups);
    }

    /// <summary>Both ends of a tapered panel that was let go.</summary>
    /// <param name="wrapped">The panel let go.</param>
    /// <param name="wantedMean">Mean curvature that is wanted over the middle folds of the middle strip [1/mm].</param>
    /// <param name="isRippleKnown">Whether it is known how much of the facets will show.</param>
    /// <returns>The ends; null for a straight panel.</returns>
    public PredictedEnds? EndsOf(WrappedPanel wrapped, double wantedMean, bool isRippleKnown)
    {
        return _ruled is null ? null : new(EndOf(0), EndOf(_forms.Length - 1));

        // A facet turns alike along its whole length, so the radius grows with the width.
        PredictedEnd EndOf(int strip)
        {
            var (from, to) = _job.Form.MiddleFolds;
            var wider = _widths[strip][from..to].Sum() / _widths[_widths.Length / 2][from..to].Sum();
            var (facets, bias) = wrapped.Strips.Count == 0 ? new(wrapped.Facets, 0) : wrapped.Strips[strip];
            return new(
                PanelPrediction.RadiusOf(wrapped.MeanCurvature / wider, _job.Panel),
                PanelPrediction.RadiusOf(wantedMean / wider, _job.Panel),
                isRippleKnown ? facets.Max(facet => facet.RippleMm) : null,
                isRippleKnown ? new Angle(facets.Max(facet => facet.Slope.Radians)) : null,
                bias);
        }
    }

    // A facet's arc on the mid surface grows with the strip's width, and so does its radius; the fold's own does not.
    private static StandingForm Under(double place, RuledStrips ruled, StandingForm form, FoldPlaces middle)
    {
        var facets = new double[form.FacetsMm.Count];
        for (var j = 0; j < facets.Length; j++)
        {
            double from = middle.AlongMm[j], to = middle.AlongMm[j + 1];
            var wider = ruled.WidthBetween(place, from, to) - 1;
            var chord = 2 * Math.Sin(middle.Curvatures[j] * (to - from) / 2) / middle.Curvatures[j];
            facets[j] = form.FacetsMm[j] + (wider * chord);
        }

        return form with { FacetsMm = facets };
    }
}
