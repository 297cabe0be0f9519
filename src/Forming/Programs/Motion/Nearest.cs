using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>The least distance so far, less what the sheet's thickness takes.</summary>
/// <param name="enough">Distance past which more is no matter [mm].</param>
/// <param name="taken">What the thickness takes of a distance between mid surfaces [mm].</param>
internal struct Nearest(double enough, double taken)
{
    private double _mm = enough;
    private JawKind? _kind;

    public readonly double Mm => _mm;

    public readonly double Taken => taken;

    public readonly double Enough => _mm + taken;

    public readonly (double Mm, JawKind? Kind) Result => (_mm, _kind);

    public void Meet(double distance, JawKind what)
    {
        if (distance - taken < _mm)
            (_mm, _kind) = (distance - taken, what);
    }

    public void MeetSolid(double distance, JawKind what)
    {
        if (distance < _mm)
            (_mm, _kind) = (distance, what);
    }
}
