namespace FormApi.Http.Problems;

/// <summary>One kind of problem.</summary>
/// <param name="Code">Stable code; the last part of the problem's type.</param>
/// <param name="Status">HTTP status.</param>
/// <param name="Title">The kind in a few words.</param>
/// <param name="Text">What it means and what to do.</param>
internal sealed record ProblemKind(string Code, int Status, string Title, string Text);
