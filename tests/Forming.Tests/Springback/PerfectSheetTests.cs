using Forming.Materials;
using Forming.Springback;

namespace Forming.Tests.Springback;

/// <summary>Limits of springback without hardening; published cases are checks of the engine.</summary>
public class PerfectSheetTests
{
    [Fact]
    public void A_sheet_bent_without_limit_keeps_all_of_its_curvature()
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Perfect(69e3, 0.33, 145), 1.5));
        Workshop.Within(1e-6, 1, law.Release(1e6) / 1e6);
    }

    // Eq. 6.31: the fully plastic sheet unloads by 1.5 ky.
    [Fact]
    public void A_fully_plastic_sheet_lets_go_one_and_a_half_times_its_yield_curvature()
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Perfect(207e3, 0.29, 200), 1.2));
        var loaded = 3000 * law.YieldCurvature;
        Workshop.Near(1.5 * law.YieldCurvature, loaded - law.Release(loaded), 1e-6);
    }

}
