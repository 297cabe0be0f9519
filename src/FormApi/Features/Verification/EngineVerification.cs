using Forming.Verification;

namespace FormApi.Features.Verification;

/// <summary>The running engine, held against the printed tables: once a process, when it is first asked.</summary>
/// <param name="tables">The tables.</param>
internal sealed class EngineVerification(IReadOnlyList<CheckTable> tables)
{
    private readonly Lazy<VerificationReport> _report = new(() => VerificationReport.Run(tables));

    /// <summary>The results; the same calculation would give the same again.</summary>
    public VerificationReport Report => _report.Value;
}
