using FormApi.Http.Json;
using Forming;
using Forming.Results;

namespace FormApi.Http.Units;

/// <summary>The only place where units are converted: the caller's on one side, the library's (mm, rad, N, MPa, kg) on the other.</summary>
internal sealed class UnitSystem
{
    private const double FootM = 12 * UnitFactors.InchMm / 1000;
    private const double InchM = UnitFactors.InchMm / 1000;

    private readonly double _length;
    private readonly double _force;
    private readonly double _stress;
    private readonly double _density;
    private readonly double _mass;
    private readonly double _energy;

    private UnitSystem(
        LengthUnit unit, double length, double force, double stress, double density, double mass, double energy, string[] names)
    {
        Unit = unit;
        _length = length;
        _force = force;
        _stress = stress;
        _density = density;
        _mass = mass;
        _energy = energy;
        (LengthName, ForceName, StressName, DensityName, MassName, EnergyName, MomentName) =
            (names[0], names[1], names[2], names[3], names[4], names[5], names[6]);
        Wording = new UnitFormatter(this);
    }

    /// <summary>Millimetres, newtons, megapascals, kilograms, joules.</summary>
    public static UnitSystem Mm { get; } =
        new(LengthUnit.Mm, 1, 1, 1, 1, 1, 1, ["mm", "N", "MPa", "kg/m³", "kg", "J", "N·mm/mm"]);

    /// <summary>Inches, pounds-force, psi, pounds, foot-pounds.</summary>
    public static UnitSystem Inch { get; } = new(
        LengthUnit.In,
        UnitFactors.InchMm,
        UnitFactors.PoundForceN,
        UnitFactors.PoundForceN / (UnitFactors.InchMm * UnitFactors.InchMm),
        UnitFactors.PoundKg / (InchM * InchM * InchM),
        UnitFactors.PoundKg,
        UnitFactors.PoundForceN * FootM,
        ["in", "lbf", "psi", "lb/in³", "lb", "ft·lbf", "lbf·in/in"]);

    /// <summary>Which system this is.</summary>
    public LengthUnit Unit { get; }

    /// <summary>Writes values inside messages in these units.</summary>
    public UnitFormatter Wording { get; }

    /// <summary>Name of the unit of length.</summary>
    public string LengthName { get; }

    /// <summary>Name of the unit of force.</summary>
    public string ForceName { get; }

    /// <summary>Name of the unit of stress.</summary>
    public string StressName { get; }

    /// <summary>Name of the unit of density.</summary>
    public string DensityName { get; }

    /// <summary>Name of the unit of mass.</summary>
    public string MassName { get; }

    /// <summary>Name of the unit of energy.</summary>
    public string EnergyName { get; }

    /// <summary>Name of the unit of a bending moment per width.</summary>
    public string MomentName { get; }

    /// <summary>Name of the unit of lengths that work is priced by.</summary>
    public string RunName => Unit == LengthUnit.In ? "ft" : "m";

    /// <summary>The system a caller named.</summary>
    /// <param name="unit">The unit of length.</param>
    public static UnitSystem Of(LengthUnit unit) => unit == LengthUnit.In ? Inch : Mm;

    /// <summary>A length in the caller's unit, in mm.</summary>
    /// <param name="length">The length in the caller's unit.</param>
    public double ToMm(double length) => length * _length;

    /// <summary>A force in the caller's unit, in N.</summary>
    /// <param name="force">The force in the caller's unit.</param>
    public double ToN(double force) => force * _force;

    /// <summary>A stress in the caller's unit, in MPa.</summary>
    /// <param name="stress">The stress in the caller's unit.</param>
    public double ToMpa(double stress) => stress * _stress;

    /// <summary>A density in the caller's unit, in kg/m³.</summary>
    /// <param name="density">The density in the caller's unit.</param>
    public double ToKgPerCubicMetre(double density) => density * _density;

    /// <summary>A value for each metre or foot, for each metre.</summary>
    /// <param name="perRun">The value for each metre or foot.</param>
    public double ToPerMetre(double perRun) => Unit == LengthUnit.In ? perRun / FootM : perRun;

    /// <summary>A value for each kilogram or pound, for each kilogram.</summary>
    /// <param name="perMass">The value for each kilogram or pound.</param>
    public double ToPerKg(double perMass) => perMass / _mass;

    /// <summary>A length that work is priced by, for the answer.</summary>
    /// <param name="metres">The length [m].</param>
    /// <returns>In metres or feet.</returns>
    public double Run(double metres) => WireNumber.Of(Unit == LengthUnit.In ? metres / FootM : metres);

    /// <summary>A value for each metre, for the answer.</summary>
    /// <param name="perMetre">The value for each metre.</param>
    /// <returns>For each metre or foot.</returns>
    public double PerRun(double perMetre) => WireNumber.Of(Unit == LengthUnit.In ? perMetre * FootM : perMetre);

    /// <summary>A value for each kilogram, for the answer.</summary>
    /// <param name="perKg">The value for each kilogram.</param>
    /// <returns>For each kilogram or pound.</returns>
    public double PerMass(double perKg) => WireNumber.Of(perKg * _mass);

    /// <summary>A length for the answer.</summary>
    /// <param name="mm">The length [mm].</param>
    public double Length(double mm) => WireNumber.Of(mm / _length);

    /// <summary>A length for the answer, or null where it is not known.</summary>
    /// <param name="mm">The length [mm].</param>
    public double? Length(double? mm) => mm is { } known ? Length(known) : null;

    /// <summary>A curvature for the answer, in the reciprocal of the unit of length.</summary>
    /// <param name="perMm">The curvature [1/mm].</param>
    public double Curvature(double perMm) => WireNumber.Of(perMm * _length);

    /// <summary>An area for the answer, in the square of the unit of length.</summary>
    /// <param name="mm2">The area [mm²].</param>
    public double Area(double mm2) => WireNumber.Of(mm2 / (_length * _length));

    /// <summary>A force for the answer.</summary>
    /// <param name="newtons">The force [N].</param>
    public double Force(double newtons) => WireNumber.Of(newtons / _force);

    /// <summary>A stress for the answer.</summary>
    /// <param name="mpa">The stress [MPa].</param>
    public double Stress(double mpa) => WireNumber.Of(mpa / _stress);

    /// <summary>A density for the answer.</summary>
    /// <param name="kgPerCubicMetre">The density [kg/m³].</param>
    public double Density(double kgPerCubicMetre) => WireNumber.Of(kgPerCubicMetre / _density);

    /// <summary>A moment per width for the answer; a force in dimension.</summary>
    /// <param name="newtonMmPerMm">The moment per width [N·mm/mm].</param>
    public double Moment(double newtonMmPerMm) => WireNumber.Of(newtonMmPerMm / _force);

    /// <summary>A whole moment for the answer.</summary>
    /// <param name="newtonMm">The moment [N·mm].</param>
    /// <returns>In N·mm or lbf·in.</returns>
    public double Torque(double newtonMm) => WireNumber.Of(newtonMm / (_force * _length));

    /// <summary>A mass for the answer.</summary>
    /// <param name="kg">The mass [kg].</param>
    public double Mass(double kg) => WireNumber.Of(kg / _mass);

    /// <summary>An energy for the answer.</summary>
    /// <param name="joules">The energy [J].</param>
    public double Energy(double joules) => WireNumber.Of(joules / _energy);

    /// <summary>An angle for the answer [°].</summary>
    /// <param name="angle">The angle.</param>
    public static double Degrees(Angle angle) => WireNumber.Of(angle.Degrees);

    /// <summary>An angle for the answer [°], or null where it is not known.</summary>
    /// <param name="angle">The angle.</param>
    public static double? Degrees(Angle? angle) => angle is { } known ? Degrees(known) : null;

    /// <summary>A point for the answer.</summary>
    /// <param name="point">The point [mm].</param>
    public Pair Point(Point point) => new(Length(point.X), Length(point.Y));

    /// <summary>A point in space for the answer.</summary>
    /// <param name="point">The point [mm].</param>
    public double[] Triple(Point3 point) => [Length(point.X), Length(point.Y), Length(point.Z)];

    /// <summary>Points for the answer.</summary>
    /// <param name="points">The points [mm].</param>
    public Pair[] Points(IReadOnlyList<Point> points) => Lists.Map(points, Point);

    /// <summary>A value of any kind for the answer.</summary>
    /// <param name="value">The value in the library's unit.</param>
    /// <param name="quantity">Its kind.</param>
    public double? Figure(double? value, Quantity quantity) => value is { } known ? Figure(known, quantity) : null;

    /// <summary>A value of any kind for the answer.</summary>
    /// <param name="value">The value in the library's unit.</param>
    /// <param name="quantity">Its kind.</param>
    public double Figure(double value, Quantity quantity) => quantity switch
    {
        Quantity.Length => Length(value),
        Quantity.Angle => Degrees(new Angle(value)),
        Quantity.Force => Force(value),
        Quantity.Stress => Stress(value),
        Quantity.MomentPerWidth => Moment(value),
        Quantity.Mass => Mass(value),
        Quantity.Energy => Energy(value),
        _ => WireNumber.Of(value),
    };

    /// <summary>Name of the unit of a kind of quantity; empty for a plain number.</summary>
    /// <param name="quantity">The kind.</param>
    public string NameOf(Quantity quantity) => quantity switch
    {
        Quantity.Length => LengthName,
        Quantity.Angle => "°",
        Quantity.Force => ForceName,
        Quantity.Stress => StressName,
        Quantity.MomentPerWidth => MomentName,
        Quantity.Mass => MassName,
        Quantity.Energy => EnergyName,
        _ => "",
    };
}
