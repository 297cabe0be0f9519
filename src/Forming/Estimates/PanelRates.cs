namespace Forming.Estimates;

/// <summary>Times for the elements of one panel, once the form stands. What stands here are assumptions of this project, measured in no shop.</summary>
public sealed record PanelRates
{
    /// <summary>What stands where a caller says nothing: assumptions.</summary>
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
