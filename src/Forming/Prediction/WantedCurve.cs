using Forming.Contact;
using Forming.Curves;
using Forming.Materials;
using Forming.Springback;

namespace Forming.Prediction;

/// <summary>The wanted curve on the panel's mid surface, from its first tangent point at the origin heading +x.</summary>
internal sealed class WantedCurve
{
    private readonly ContactCurve _curve;
    private readonly double _half;
    private readonly double _start;

    private WantedCurve(ContactCurve curve, double thickness)
    {
        _curve = curve;
        _half = thickness / 2;
        _start = curve.Runs[0].Start.MidMm;
        LengthMm = curve.Runs[^1].End.MidMm - _start;
        EndMm = curve.MidMm - _start;
    }

    /// <summary>From the first tangent point to the last [mm].</summary>
    public double LengthMm { get; }

    /// <summary>From the first tangent point to the end of the curve, a flat at its end included [mm].</summary>
    public double EndMm { get; }

    public Angle Sweep => _curve.Sweep;

    public static WantedCurve Of(FinishedCurve finished, Sheet sheet)
    {
        // A panel that does not spring back would be formed on its own finished curve.
        var unsprung = new FormingRule(BendingLaw.Of(sheet), MeasuredFactor: 1);
        return new(ContactCurve.Solve(finished, unsprung, sheet.ThicknessMm), sheet.ThicknessMm);
    }

    /// <summary>Place and direction at a distance from the first tangent point.</summary>
    /// <param name="alongMm">The distance [mm], 0 to the curved length.</param>
    public (Point Position, double Turn) At(double alongMm)
    {
        var mid = _start + alongMm;
        var run = RunBefore(mid);
        if (mid <= run.End.MidMm)
        {
            var place = run.At(CurveMeasure.MidLength, Math.Max(0, mid - run.Start.MidMm));
            return (ToMid(place.Position, place.Turn), place.Turn);
        }

        var end = run.End;
        return (ToMid(end.Position + ((mid - end.MidMm) * Point.Along(end.Turn)), end.Turn), end.Turn);
    }

    /// <summary>Whether the curve is flat at a distance from the first tangent point.</summary>
    /// <param name="alongMm">The distance [mm].</param>
    public bool IsFlatAt(double alongMm)
    {
        var mid = _start + alongMm;
        return mid > RunBefore(mid).End.MidMm && alongMm < LengthMm;
    }

    private CurvedRun RunBefore(double mid)
    {
        var i = 0;
        while (i + 1 < _curve.Runs.Count && mid >= _curve.Runs[i + 1].Start.MidMm)
            i++;
        return _curve.Runs[i];
    }

    private Point ToMid(Point contact, double turn) =>
        contact - (_half * Point.Along(turn).Left()) + new Point(0, _half) - _curve.Runs[0].Start.Position;
}
