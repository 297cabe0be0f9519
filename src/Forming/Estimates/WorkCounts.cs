namespace Forming.Estimates;

/// <summary>Counts of one form that a caller may know better, such as from its brake program; null takes an assumption.</summary>
/// <param name="Handlings">Times the blank is put into the brake: loaded, turned, drawn out and put in again.</param>
/// <param name="StopChanges">Changes of the stop after its first setting.</param>
/// <param name="Strips">Test strips folded first.</param>
/// <param name="Checks">Checks against a template.</param>
public sealed record WorkCounts(int? Handlings = null, int? StopChanges = null, int? Strips = null, int? Checks = null);
