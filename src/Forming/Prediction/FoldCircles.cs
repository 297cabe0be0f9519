namespace Forming.Prediction;

/// <summary>The folds as the panel's mid surface meets them: circles of outer fold radius and half a thickness.</summary>
internal sealed class FoldCircles
{
    private readonly WrapSetup _setup;
    private Point[] _unloaded = [];

    /// <summary>Lays the form out: the first fold's tangent point at the origin, the lead-in along the x axis behind it.</summary>
    /// <param name="form">The form.</param>
    /// <param name="thicknessMm">The panel's thickness [mm].</param>
    /// <param name="setup">Clamp, hand and the form's own stiffness.</param>
    public FoldCircles(StandingForm form, double thicknessMm, WrapSetup setup)
    {
        _setup = setup;
        Form = form;
        var folds = form.Folds;
        RadiusMm = form.OuterFoldRadiusMm + (thicknessMm / 2);
        Centres = new Point[folds + 1];
        Spans = new double[folds];
        Centres[0] = new(0, RadiusMm);
        double heading = 0;
        for (var j = 0; j < folds; j++)
        {
            var isLast = j + 1 == folds;
            heading += form.FoldAngles[j];
            var chord = isLast ? LandingOnLeadOut(form, setup.LeverMm) : form.StraightMm(j);
            Centres[j + 1] = Centres[j] + (chord * Point.Along(heading));

            // Clamped at its tangent point, the panel turns by all of the first fold; of the others half lies on either side.
            var turn = (form.FoldAngles[j] / (j == 0 ? 1 : 2)) + (isLast ? 0 : form.FoldAngles[j + 1] / 2);
            Spans[j] = ArcOver(chord, turn);
        }

        LayFlexure();
    }

    /// <summary>The form.</summary>
    public StandingForm Form { get; }

    /// <summary>Radius of the circles [mm].</summary>
    public double RadiusMm { get; }

    /// <summary>[m + 1] centres; the last is no fold but a place on the lead-out where the wrap is complete.</summary>
    public Point[] Centres { get; }

    /// <summary>[m] mid-surface lengths from circle to circle [mm], as a smooth arc over both.</summary>
    public double[] Spans { get; }

    /// <summary>How the form bends under the pull, or null where it does not.</summary>
    public FormFlexure? Flexure { get; private set; }

    /// <summary>Moves the circles to where the form's bending brings them.</summary>
    /// <param name="touches">The folds that are pressed.</param>
    public void Bend(ReadOnlySpan<Touch> touches)
    {
        if (Flexure is null)
            return;
        for (var c = 0; c < Centres.Length; c++)
            Centres[c] = _unloaded[c] + Flexure.MoveOf(c, touches);
    }

    /// <summary>Halves how far along the lead-out the panel has to lie, where the sheet does not reach so far.</summary>
    /// <param name="circle">The circle that is out of reach.</param>
    /// <returns>Whether it is the one on the lead-out, and not near its fold already.</returns>
    public bool BringExitNearer(int circle)
    {
        if (circle < Centres.Length - 1 || (Centres[^1] - Centres[^2]).Length < RadiusMm)
            return false;
        if (Flexure is not null)
            _unloaded.CopyTo(Centres, 0);
        Centres[^1] = 0.5 * (Centres[^1] + Centres[^2]);
        LayFlexure();
        return true;
    }

    private void LayFlexure()
    {
        if (_setup.Beam is not { } beam)
            return;
        _unloaded = [.. Centres];
        Flexure = new(Form, beam, _unloaded, _setup.ClampGapMm);
    }

    // One facet on, as far as the sheet reaches.
    private static double LandingOnLeadOut(StandingForm form, double leverMm)
    {
        var facet = form.FacetsMm.Count > 0 ? form.FacetsMm[^1] - form.SetbackMm(form.Folds - 1) : leverMm;
        return Math.Min(facet, leverMm / 2);
    }

    private double ArcOver(double chord, double turn) =>
        (turn > 1e-9 ? chord * (turn / 2) / Math.Sin(turn / 2) : chord) + (RadiusMm * turn);
}
