using Forming.Jobs;
using Forming.Results;

namespace Forming.Checks;

/// <summary>What to do about a check that did not pass.</summary>
/// <param name="Text">What to do, in words; arguments are <see cref="Figure"/>s.</param>
/// <param name="Changes">Changes to the job that were tried together and found to pass the check with no other one worse; empty where none was found, or none is tried.</param>
public sealed record Remedy(FormattableString Text, IReadOnlyList<JobChange> Changes);
