namespace Forming.Results;

/// <summary>What kind of quantity a value is; its unit inside is fixed by the kind.</summary>
public enum Quantity
{
    /// <summary>A plain number.</summary>
    Number,

    /// <summary>A length [mm].</summary>
    Length,

    /// <summary>An angle [rad].</summary>
    Angle,

    /// <summary>A force [N].</summary>
    Force,

    /// <summary>A stress [MPa].</summary>
    Stress,

    /// <summary>A bending moment per width [N·mm/mm].</summary>
    MomentPerWidth,

    /// <summary>A mass [kg].</summary>
    Mass,

    /// <summary>An energy [J].</summary>
    Energy,
}

/// <summary>A number with its kind, so that whoever shows it can choose the unit.</summary>
/// <param name="Value">The value in the unit that <see cref="Results.Quantity"/> fixes.</param>
/// <param name="Quantity">The kind.</param>
public readonly record struct Figure(double Value, Quantity Quantity)
{
    /// <summary>A plain number.</summary>
    /// <param name="value">The number.</param>
    public static Figure Number(double value) => new(value, Quantity.Number);

    /// <summary>A length.</summary>
    /// <param name="mm">The length [mm].</param>
    public static Figure Length(double mm) => new(mm, Quantity.Length);

    /// <summary>An angle.</summary>
    /// <param name="radians">The angle [rad].</param>
    public static Figure Angle(double radians) => new(radians, Quantity.Angle);

    /// <summary>A force.</summary>
    /// <param name="newtons">The force [N].</param>
    public static Figure Force(double newtons) => new(newtons, Quantity.Force);

    /// <summary>A stress.</summary>
    /// <param name="mpa">The stress [MPa].</param>
    public static Figure Stress(double mpa) => new(mpa, Quantity.Stress);

    /// <summary>A bending moment per width.</summary>
    /// <param name="newtonMmPerMm">The moment per width [N·mm/mm].</param>
    public static Figure Moment(double newtonMmPerMm) => new(newtonMmPerMm, Quantity.MomentPerWidth);

    /// <summary>A mass.</summary>
    /// <param name="kg">The mass [kg].</param>
    public static Figure Mass(double kg) => new(kg, Quantity.Mass);

    /// <summary>An energy.</summary>
    /// <param name="joules">The energy [J].</param>
    public static Figure Energy(double joules) => new(joules, Quantity.Energy);
}

/// <summary>The gate that every number passes on its way into an answer, a drawing or a file.</summary>
public static class Finite
{
    /// <summary>The number, which is one.</summary>
    /// <param name="value">The number.</param>
    /// <exception cref="NoSolutionException"><c>figure.not-finite</c>: it is infinite or not a number.</exception>
    public static double Of(double value) => double.IsFinite(value)
        ? value
        : throw new NoSolutionException(
            "figure.not-finite",
            "",
            $"a value of this job is not a number: something given is far outside what sheet metal and a brake can do",
            $"dimensions of a real sheet, form and brake");
}
