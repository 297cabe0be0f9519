namespace Forming.Estimates;

/// <summary>What a learning curve's power law is about.</summary>
public enum LearningModel
{
    /// <summary>The time of the n-th panel: Crawford's form.</summary>
    Unit,

    /// <summary>The mean time of the first n panels: Wright's form.</summary>
    CumulativeAverage,
}
