namespace Forming.Estimates;

/// <summary>Time of one element of work, in minutes of one person.</summary>
/// <param name="FixedMinutes">Once for a form or a panel [min], at least 0.</param>
/// <param name="EachMinutes">For each of what the element counts, or for a metre of what it measures [min or min/m], at least 0.</param>
public readonly record struct ElementRate(double FixedMinutes, double EachMinutes)
{
    /// <summary>The time of so many.</summary>
    /// <param name="quantity">Count, or length [m]; at least 0.</param>
    /// <returns>The time [min]; none where nothing is to be done.</returns>
    public double MinutesFor(double quantity) => quantity > 0 ? FixedMinutes + (quantity * EachMinutes) : 0;
}
