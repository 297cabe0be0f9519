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

    /// <summary>Whether they lie along a taper.</summary>
    public bool AreOfTaper => _ruled is not null;

    /// <summary>How many they are.</summary>
    public int Count => _forms.Length;

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
        return _forms.Length == 1 ? [FormStrip.Only(_forms[0], setups[0])] : FormStrip.Along(_forms, _ruled!.Places, _widths, setups);
    }

    /// <summary>Mean width over the middle folds of a strip, against that of the middle one.</summary>
    /// <param name="strip">Its number, near end 0.</param>
    /// <param name="middle">The middle folds.</param>
    public double WidthOver(int strip, (int From, int To) middle) =>
        _widths[strip][middle.From..middle.To].Sum() / _widths[_widths.Length / 2][middle.From..middle.To].Sum();

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
