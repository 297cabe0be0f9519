namespace Forming.Estimates;

/// <summary>Another way to make the same panels, by its maker's own figures.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FixedCost">Once, whatever the count [money], at least 0.</param>
/// <param name="CostPerPiece">For each panel, its sheet included [money], at least 0.</param>
/// <param name="MinutesPerPiece">Labour for each panel beside that, at the same rate [min], at least 0.</param>
public sealed record OtherMethod(string Name, double FixedCost, double CostPerPiece, double MinutesPerPiece = 0)
{
    /// <summary>Its cost of each panel, labour included [money].</summary>
    /// <param name="labourPerHour">An hour of labour [money].</param>
    public double EachPiece(double labourPerHour) => CostPerPiece + (MinutesPerPiece * labourPerHour / 60);
}
