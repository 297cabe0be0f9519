namespace Forming.Estimates;

/// <summary>What panels cost together: something once, and for each panel labour that may fall with practice, and sheet.</summary>
/// <param name="Once">Once, trial panels apart [money].</param>
/// <param name="FirstLabour">Labour of the first panel [money].</param>
/// <param name="Material">What does not fall with practice, for each panel [money].</param>
/// <param name="Learning">How labour falls.</param>
/// <param name="Trials">Panels bent before the first good one, at least 0; they teach as all others do.</param>
public sealed record CostLine(double Once, double FirstLabour, double Material, LearningCurve Learning, int Trials = 0)
{
    private const double Rounding = 1e-12;

    /// <summary>What is paid before the first good panel [money].</summary>
    public double Begin => Once + (FirstLabour * Learning.Total(Trials)) + (Material * Trials);

    /// <summary>Cost of one panel, without what is paid before the first.</summary>
    /// <param name="n">Which good panel, from 1.</param>
    public double Own(int n) => LabourOf(n) + Material;

    /// <summary>What a panel's own cost falls to, and never below.</summary>
    public double Floor => Material + (Learning.Learns ? 0 : FirstLabour);

    /// <summary>Least and most by which any panel after the first n costs more than another method's.</summary>
    /// <param name="other">The other method.</param>
    /// <param name="n">How many panels are bent already.</param>
    public (double Least, double Most) Over(CostLine other, int n)
    {
        if (Learning != other.Learning || Trials != other.Trials)
            return (Difference(Floor, other.Own(n + 1)), Difference(Own(n + 1), other.Floor));
        // Both are learnt alike, so the difference keeps its sign and fades.
        var next = Difference(FirstLabour, other.FirstLabour) * Learning.Unit(n + 1 + Trials);
        var last = Learning.Learns ? 0 : next;
        var sheet = Difference(Material, other.Material);
        return (Math.Min(next, last) + sheet, Math.Max(next, last) + sheet);
    }

    // Costs that differ by rounding alone are equal.
    private static double Difference(double mine, double others) =>
        Math.Abs(mine - others) <= Rounding * Math.Max(mine, others) ? 0 : mine - others;

    private double LabourOf(int n) => FirstLabour * Learning.Unit(n + Trials);
}
