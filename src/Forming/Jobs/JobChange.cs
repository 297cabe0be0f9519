namespace Forming.Jobs;

/// <summary>One field of a job, and what it is changed to.</summary>
/// <param name="Field">The field.</param>
/// <param name="Number">The new number in the caller's unit (angles in degrees); null for a word, or where the field is cleared.</param>
/// <param name="Word">The new word, one of the enum that the field names; null for a number.</param>
/// <param name="Part">Which bend of the curve; null for the whole.</param>
public sealed record JobChange(JobField Field, double? Number, Enum? Word = null, CurvePart? Part = null);
