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

    /// <summary>Price of the form's sheet; null takes the nominal price of its metal.</summary>
    public SheetPrice? FormSheet { get; init; }

    /// <summary>Price of the panel's sheet; null takes the nominal price of its metal.</summary>
    public SheetPrice? PanelSheet { get; init; }
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

    /// <summary>Every element's id with its rate, in the order of the work.</summary>
    public IReadOnlyList<(string Id, ElementRate Rate)> ByElement =>
    [
        ("layout", Layout),
        ("cutting", Cutting),
        ("test-strips", TestStrips),
        ("set-up", SetUp),
        ("handling", Handling),
        ("folding", Folding),
        ("checking", Checking),
        ("finishing", Finishing),
    ];
}

/// <summary>
/// Times for the elements of one panel, once the form is built. These are assumptions of this project, not measured in a shop.
/// </summary>
public sealed record PanelRates
{
    /// <summary>What is used where a caller says nothing: assumptions.</summary>
    public static PanelRates Default { get; } = new();

    /// <summary>Getting the sheet out, and each metre of cut.</summary>
    public ElementRate Cutting { get; init; } = new(4, 1.5);

    /// <summary>Each registration mark.</summary>
    public ElementRate Marking { get; init; } = new(1, 0.5);

    /// <summary>Each time panel and form are laid up, clamped, and unclamped.</summary>
    public ElementRate Clamping { get; init; } = new(0, 5);

    /// <summary>Each pull round the form and back.</summary>
    public ElementRate Pulling { get; init; } = new(0, 2);

    /// <summary>Each metre of edge trimmed after the pull.</summary>
    public ElementRate Trimming { get; init; } = new(0, 3);

    /// <summary>Each bend against its template.</summary>
    public ElementRate Checking { get; init; } = new(0, 3);

    /// <summary>Cleaning, and each metre of edge deburred.</summary>
    public ElementRate Finishing { get; init; } = new(2, 1);

    /// <summary>Every element's id with its rate, in the order of the work.</summary>
    public IReadOnlyList<(string Id, ElementRate Rate)> ByElement =>
    [
        ("cutting", Cutting),
        ("marking", Marking),
        ("clamping", Clamping),
        ("pulling", Pulling),
        ("trimming", Trimming),
        ("checking", Checking),
        ("finishing", Finishing),
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

    /// <summary>Money for an hour.</summary>
    MoneyPerHour,

    /// <summary>Money for a kilogram.</summary>
    MoneyPerKg,
}
