namespace Forming.Estimates;

/// <summary>What work takes and what labour and sheet cost.</summary>
public sealed record EstimateRates
{
    /// <summary>Times of building a form.</summary>
    public FormRates Form { get; init; } = FormRates.Default;

    /// <summary>Times of a panel.</summary>
    public PanelRates Panel { get; init; } = PanelRates.Default;

    /// <summary>An hour of one person's work [money], at least 0.</summary>
    public double LabourPerHour { get; init; } = NominalPrices.LabourPerHour;

    /// <summary>What rent, power and the office add, as a share of labour and sheet, at least 0.</summary>
    public double Overhead { get; init; } = DefaultOverhead;

    /// <summary>Least price of a job [money], at least 0; null takes an hour of labour.</summary>
    public double? MinimumCharge { get; init; }

    /// <summary>How the form's sheet is bought; null takes the nominal price of its metal, by the area used.</summary>
    public SheetPurchase? FormSheet { get; init; }

    /// <summary>How the panel's sheet is bought; null takes the nominal price of its metal, by the area used.</summary>
    public SheetPurchase? PanelSheet { get; init; }

    /// <summary>Share that overhead adds where a caller says nothing: common practice, no source.</summary>
    public const double DefaultOverhead = 0.15;

    /// <summary>A minute of one person's work [money].</summary>
    internal double LabourPerMinute => LabourPerHour / 60;

    /// <summary>Least price of a job where nobody gave one: an hour of labour; common practice, no source.</summary>
    /// <param name="labourPerHour">An hour of one person's work [money].</param>
    /// <returns>The price [money].</returns>
    public static double StandardMinimum(double labourPerHour) => labourPerHour;
}

/// <summary>Times for the elements of building a form. These are assumptions of this project, not measured in a shop.</summary>
public sealed record FormRates
{
    /// <summary>What is used where a caller says nothing: assumptions.</summary>
    public static FormRates Default { get; } = new();

    /// <summary>Setting out the blank, and each mark.</summary>
    public ElementRate Layout { get; init; } = new(10, 1.5);

    /// <summary>Getting the sheet out, and each metre of cut.</summary>
    public ElementRate Cutting { get; init; } = new(5, 2);

    /// <summary>Each test strip: cut, folded, measured.</summary>
    public ElementRate TestStrips { get; init; } = new(0, 6);

    /// <summary>Setting up the brake with its first stop, and each change of the stop.</summary>
    public ElementRate SetUp { get; init; } = new(20, 3);

    /// <summary>Each time the blank is put into the brake.</summary>
    public ElementRate Handling { get; init; } = new(0, 2);

    /// <summary>Each fold: to the mark, clamp, fold, open.</summary>
    public ElementRate Folding { get; init; } = new(0, 1);

    /// <summary>Making a template, and each check against it.</summary>
    public ElementRate Checking { get; init; } = new(5, 2);

    /// <summary>Cleaning, and each metre of edge deburred.</summary>
    public ElementRate Finishing { get; init; } = new(5, 2);

    /// <summary>Drawing a rib, and each one cut and set, where ribs back the form.</summary>
    public ElementRate Ribs { get; init; } = new(15, 10);

    /// <summary>Every element's id with its rate and what that counts, in the order of the work.</summary>
    public IReadOnlyList<(string Id, ElementRate Rate, WorkUnit Unit)> ByElement =>
    [
        ("layout", Layout, WorkUnit.Mark),
        ("cutting", Cutting, WorkUnit.Metre),
        ("test-strips", TestStrips, WorkUnit.Strip),
        ("set-up", SetUp, WorkUnit.StopChange),
        ("handling", Handling, WorkUnit.Handling),
        ("folding", Folding, WorkUnit.Fold),
        ("checking", Checking, WorkUnit.Check),
        ("finishing", Finishing, WorkUnit.Metre),
        ("ribs", Ribs, WorkUnit.Rib),
    ];
}

/// <summary>
/// Times for the elements of one panel, once the form is built. These are assumptions of this project, not measured in a shop.
/// </summary>
public sealed record PanelRates
{
    /// <summary>What is used where a caller says nothing: assumptions.</summary>
    public static PanelRates Default { get; } = new();

    /// <summary>Getting the bench ready, once for the batch, and fixing each form to it.</summary>
    public ElementRate SetUp { get; init; } = new(5, 10);

    /// <summary>Getting the sheet out, and each metre of cut.</summary>
    public ElementRate Cutting { get; init; } = new(4, 1.5);

    /// <summary>Each registration mark.</summary>
    public ElementRate Marking { get; init; } = new(1, 0.5);

    /// <summary>Each time the panel is laid up to its marks and taken off, for each person of the crew.</summary>
    public ElementRate LayingUp { get; init; } = new(0, 3);

    /// <summary>Each clamp put on and taken off, for each person of the crew.</summary>
    public ElementRate Clamping { get; init; } = new(0, 1);

    /// <summary>Each time a winch or press is rigged and taken off, for each person of the crew.</summary>
    public ElementRate Rigging { get; init; } = new(0, 10);

    /// <summary>Each pull round the form and back, for each person of the crew.</summary>
    public ElementRate Pulling { get; init; } = new(0, 2);

    /// <summary>Each metre of edge trimmed after the pull.</summary>
    public ElementRate Trimming { get; init; } = new(0, 3);

    /// <summary>Each bend against its template.</summary>
    public ElementRate Checking { get; init; } = new(0, 3);

    /// <summary>Cleaning, and each metre of edge deburred.</summary>
    public ElementRate Finishing { get; init; } = new(2, 1);

    /// <summary>Every element's id with its rate and what that counts, in the order of the work.</summary>
    public IReadOnlyList<(string Id, ElementRate Rate, WorkUnit Unit)> ByElement =>
    [
        ("set-up", SetUp, WorkUnit.Form),
        ("cutting", Cutting, WorkUnit.Metre),
        ("marking", Marking, WorkUnit.Mark),
        ("laying-up", LayingUp, WorkUnit.Pull),
        ("clamping", Clamping, WorkUnit.Clamp),
        ("rigging", Rigging, WorkUnit.Pull),
        ("pulling", Pulling, WorkUnit.Pull),
        ("trimming", Trimming, WorkUnit.Metre),
        ("checking", Checking, WorkUnit.Check),
        ("finishing", Finishing, WorkUnit.Metre),
    ];
}

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

/// <summary>Unit of an assumed value.</summary>
public enum RateUnit
{
    /// <summary>A plain count or share.</summary>
    None,

    /// <summary>Minutes of one person.</summary>
    Minutes,

    /// <summary>Minutes of one person for a metre.</summary>
    MinutesPerMetre,

    /// <summary>A length [mm].</summary>
    Length,

    /// <summary>An angle [°].</summary>
    Degrees,

    /// <summary>Money.</summary>
    Money,

    /// <summary>Money for an hour.</summary>
    MoneyPerHour,

    /// <summary>Money for a kilogram.</summary>
    MoneyPerKg,
}
