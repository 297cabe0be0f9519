namespace Forming.Estimates;

/// <summary>Times for the elements of building a form. What stands here are assumptions of this project, measured in no shop.</summary>
public sealed record FormRates
{
    /// <summary>What stands where a caller says nothing: assumptions.</summary>
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
