namespace Forming.Folds;

/// <summary>How stop angles are rounded to the steps of a stop.</summary>
public enum StopRounding
{
    /// <summary>Each group of alike folds by itself: the fewest settings.</summary>
    Each,

    /// <summary>Along the form, each fold making up for what rounding left so far: the sum comes out within half a step, at the cost of more settings.</summary>
    Sum,
}
