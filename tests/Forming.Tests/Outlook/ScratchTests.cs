using Forming.Jobs;
using Forming.Outlook;
using Xunit.Abstractions;
namespace Forming.Tests.Outlook;
public class ScratchTests(ITestOutputHelper o)
{
    [Fact]
    public void Look()
    {
        var only = new Dictionary<string, Func<Scatter, Scatter>>
        {
            ["all"] = s => s,
            ["Y"] = s => s with { ThicknessMm = 0, Modulus = 0, FoldAngle = Angle.Zero, MarkMm = 0 },
            ["ang"] = s => s with { Yield = 0, ThicknessMm = 0, Modulus = 0, MarkMm = 0 },
            ["mark"] = s => s with { Yield = 0, ThicknessMm = 0, Modulus = 0, FoldAngle = Angle.Zero },
        };
        foreach (var (m, t, r, s, f) in new[] { ("al-3003-o", 1.6, 75.0, 90.0, 6), ("al-3003-h14", 1.6, 75.0, 90.0, 8), ("ss-304", 1.27, 100.0, 90.0, 8), ("al-5052-h32", 2.0, 120, 90, 11), ("steel-cr-cs", 0.9, 150, 90, 11), ("steel-cr-cs", 1.0, 400, 45, 9),("steel-cr-cs", 1.0, 600, 30, 9), ("ss-304", 0.8, 400, 30, 9) })
        {
            var job = OutlookJobs.Solved(m, t, r, s, f);
            foreach (var (name, map) in only)
            {
                var j = (job.Job with { Panel = job.Job.Panel with { Scatter = map(ScatterDefaults.Of(job.Job.Panel)) } }, job.Nominal);
                var sw = System.Diagnostics.Stopwatch.StartNew();
                var look = OutlookJobs.Of(j);
                var ms = sw.Elapsed.TotalMilliseconds;
                var all = OutlookJobs.Drawn(j, 300);
                var R = all.Where(x => x.RadiusMm is not null).Select(x => x.RadiusMm!.Value).Order().ToArray();
                var S = all.Select(x => x.Sweep.Degrees).Order().ToArray();
                var H = all.Select(x => x.Facets.Max(y => y.RippleMm!.Value)).Order().ToArray();
                double Q(double[] a, double q) => a[(int)Math.Round(q * (a.Length - 1))];
                o.WriteLine(FormattableString.Invariant($"{m} {t} R{r} {name}: Ks {look.SpringbackFactor:0.00} coarse {look.IsCoarse} {ms:0.0} ms n {all.Count} R {look.RadiusMm?.Low:0.0} {look.RadiusMm?.Value:0.0} {look.RadiusMm?.High:0.0} MC {Q(R, .025):0.0} {R.Average():0.0} {Q(R, .975):0.0} | sweep {look.Sweep?.Low * 57.2958:0.0} {look.Sweep?.High * 57.2958:0.0} MC {Q(S, .025):0.0} {Q(S, .975):0.0} | ripple {look.Ripple?.ValueMm:0.000} {look.Ripple?.HighMm:0.000} MC {Q(H, .5):0.000} {Q(H, .95):0.000} why {look.WhyUnknown}"));
            }
        }
    }
}
