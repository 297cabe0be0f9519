namespace Forming.Estimates;

/// <summary>What a learning curve's power law is about.</summary>
public enum LearningModel
{
    /// <summary>The time of the n-th panel: Crawford's form.</summary>
    Unit,

    /// <summary>The mean time of the first n panels: Wright's form.</summary>
    CumulativeAverage,
}

/// <summary>How work gets faster with practice: each doubling of the count takes the same share of the time before.</summary>
/// <param name="Model">What the law is about.</param>
/// <param name="Rate">Time after a doubling over the time before, above 0.5, at most 1; 1 is no learning.</param>
/// <remarks>
/// T. P. Wright, Factors Affecting the Cost of Airplanes, Journal of the Aeronautical Sciences 3 (1936), 122–128: from memory.
/// Mean of the first n (Wright) or the n-th itself (Crawford) takes <c>n^b</c> of the first, <c>b = log2 r</c>.
/// </remarks>
public sealed record LearningCurve(LearningModel Model, double Rate)
{
    /// <summary>Nobody gets faster.</summary>
    public static LearningCurve None { get; } = new(LearningModel.Unit, 1);

    /// <summary>The exponent b, above -1, at most 0.</summary>
    public double Exponent => Math.Log2(Rate);

    /// <summary>Whether work gets faster at all.</summary>
    public bool Learns => Rate < 1;

    /// <summary>Time of one panel over that of the first; never rises with the count.</summary>
    /// <param name="n">Which panel, from 1.</param>
    public double Unit(int n) => Model == LearningModel.Unit
        ? Math.Pow(n, Exponent)
        : Math.Pow(n, 1 + Exponent) - Math.Pow(n - 1, 1 + Exponent);

    /// <summary>Time of the first panels together over that of the first one.</summary>
    /// <param name="counts">How many panels, at least 1, in rising order.</param>
    /// <returns>[n] totals, one for each count.</returns>
    public double[] Totals(IReadOnlyList<int> counts)
    {
        var totals = new double[counts.Count];
        double sum = 0;
        var done = 0;
        for (var i = 0; i < totals.Length; i++)
        {
            if (Model == LearningModel.CumulativeAverage)
            {
                totals[i] = Math.Pow(counts[i], 1 + Exponent);
                continue;
            }

            while (done < counts[i])
                sum += Unit(++done);
            totals[i] = sum;
        }

        return totals;
    }

    /// <summary>Time of the first panels together over that of the first one.</summary>
    /// <param name="count">How many panels, at least 1.</param>
    public double Total(int count) => Totals([count])[0];
}
