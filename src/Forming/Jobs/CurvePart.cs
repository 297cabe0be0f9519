namespace Forming.Jobs;

/// <summary>One bend of a curve that has several.</summary>
/// <param name="IsTaperEnd">Whether it is an end of a taper; else a piece of a chain.</param>
/// <param name="Index">Index of the piece; of a taper 0 is the near end and 1 the far one.</param>
public readonly record struct CurvePart(bool IsTaperEnd, int Index);
