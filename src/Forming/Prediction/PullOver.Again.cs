using System.Runtime.InteropServices;

namespace Forming.Prediction;

/// <summary>Where a pull begins again: a step that led nowhere, or the whole pull with the panel let go.</summary>
internal sealed partial class PullOver
{
    /// <summary>The panel let go, and pulled once more.</summary>
    /// <param name="circles">The folds that it is pulled over then.</param>
    /// <param name="work">What that pull may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public PullOver Again(FoldCircles circles, PullWork work, CancellationToken cancellation) =>
        new(circles, Strip.LetGo(), _momentScale, ClampGapMm, work, cancellation);

    private void Save()
    {
        Strip.Heading.CopyTo(_start.Heading, 0);
        _places.CopyTo(_start.Places, 0);
        _start.Touches.Clear();
        _start.Touches.AddRange(_equilibrium.Touches);
        _start.Force = _equilibrium.Force;
    }

    private void Restore()
    {
        _start.Heading.CopyTo(Strip.Heading, 0);
        _start.Places.CopyTo(_places, 0);
        _equilibrium.Touches.Clear();
        _equilibrium.Touches.AddRange(_start.Touches);
        _equilibrium.Force = _start.Force;
        Circles.Bend(CollectionsMarshal.AsSpan(_equilibrium.Touches));
        Strip.Update();
    }

    private sealed class Start(int nodes, int circles)
    {
        public double[] Heading { get; } = new double[nodes];

        public Touch[] Places { get; } = new Touch[circles];

        public List<Touch> Touches { get; } = [];

        public double Force { get; set; }
    }
}
