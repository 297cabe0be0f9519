using Forming.Verification;

namespace FormApi.Features.Verification;

/// <summary>Makes the verification known to the endpoints.</summary>
internal static class VerificationSetup
{
    /// <summary>Adds the tables, read when they are first needed, the engine held against them, and the known plan.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddVerification(this WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton(_ => CheckTables.All);
        builder.Services.AddSingleton<EngineVerification>();
        builder.Services.AddSingleton(new KnownPlan(KnownPlan.QuarterTurn));
    }
}
