namespace Forming.Estimates;

/// <summary>What a job costs at any count of panels.</summary>
/// <param name="Job">The job.</param>
/// <param name="FormMinutes">Building all forms [min].</param>
/// <param name="SetUpMinutes">Getting the bench ready [min].</param>
/// <param name="FirstPanelMinutes">The first panel [min].</param>
/// <param name="Forms">How many forms there are.</param>
/// <param name="FormBill">Sheet of forms.</param>
/// <param name="PanelBill">Sheet of panels.</param>
internal sealed record Pricing(
    EstimateJob Job, Band FormMinutes, Band SetUpMinutes, Band FirstPanelMinutes, int Forms, SheetBill FormBill, SheetBill PanelBill)
{
    private readonly Dictionary<int, double> _learnt = LearntOf(Job);

    private MaterialLine FormSheet { get; } = FormBill.For(Forms, Job.Spreads.Material);

    private double AMinute => Job.Rates.LabourPerMinute;

    private double WithOverhead => 1 + Job.Rates.Overhead;

    /// <summary>Time and cost at every count that was asked for, in that order.</summary>
    public IReadOnlyList<PriceRow> Rows() => [.. Job.Pieces.Select(Row)];

    /// <summary>Time of the trial panels and a count of good ones over that of the first panel.</summary>
    /// <param name="pieces">Good panels: 0, or a count that was asked for.</param>
    public double Learnt(int pieces) => _learnt[pieces + Job.Trials];

    /// <summary>Sheet of a count of panels and their trials.</summary>
    /// <param name="pieces">Good panels.</param>
    public MaterialLine PanelSheet(int pieces) => PanelBill.For(pieces + Job.Trials, Job.Spreads.Material);

    /// <summary>The form and its panels as a line of costs, whole sheets taken as full.</summary>
    /// <param name="bound">Which bound.</param>
    public CostLine FormLine(Func<Band, double> bound) => LineOf(
        (AMinute * bound(FormMinutes + SetUpMinutes)) + bound(FormSheet.Cost), AMinute * bound(FirstPanelMinutes), bound);

    /// <summary>Another way in the same shop, of the same sheet, with the same trials and learning, as a line of costs.</summary>
    /// <param name="once">Once [money].</param>
    /// <param name="firstLabour">Labour of the first panel [money].</param>
    /// <param name="bound">Which bound of the sheet's price.</param>
    public CostLine LineOf(double once, double firstLabour, Func<Band, double> bound) => new(
        WithOverhead * once,
        WithOverhead * firstLabour,
        WithOverhead * bound(Job.Spreads.Material.Around(PanelBill.EachOfMany)),
        Job.Learning,
        Job.Trials);

    private static Dictionary<int, double> LearntOf(EstimateJob job)
    {
        int[] counts = [.. job.Pieces.Append(0).Select(pieces => pieces + job.Trials).Distinct().Order()];
        return counts.Zip(job.Learning.Totals(counts)).ToDictionary();
    }

    private PriceRow Row(int pieces)
    {
        var sheet = PanelSheet(pieces);
        var trials = Learnt(0) * FirstPanelMinutes;
        var panels = (Learnt(pieces) - Learnt(0)) * FirstPanelMinutes;
        var (form, setUp) = (AMinute * FormMinutes, AMinute * SetUpMinutes);
        var (trialLabour, panelLabour) = (AMinute * trials, AMinute * panels);
        var overhead = Job.Rates.Overhead * (form + FormSheet.Cost + setUp + trialLabour + panelLabour + sheet.Cost);
        var costs = new EstimateCosts(form, FormSheet.Cost, setUp, trialLabour, panelLabour, sheet.Cost, overhead);
        var least = Job.MinimumCharge;
        var total = costs.Total;
        return new()
        {
            Pieces = pieces,
            Minutes = FormMinutes + SetUpMinutes + trials + panels,
            LastPanelMinutes = Job.Learning.Unit(pieces + Job.Trials) * FirstPanelMinutes,
            Materials = [FormSheet, sheet],
            Costs = costs,
            Price = new(Math.Max(least, total.Low), Math.Max(least, total.Likely), Math.Max(least, total.High)),
            IsMinimum = total.Likely < least,
        };
    }
}
