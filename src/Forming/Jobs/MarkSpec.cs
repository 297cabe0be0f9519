using Forming.Layout;

namespace Forming.Jobs;

/// <summary>How the flat blank is marked.</summary>
/// <param name="Datum">Where marks are measured from.</param>
/// <param name="Tape">The tape they are read on.</param>
public sealed record MarkSpec(Datum Datum, Tape Tape);
