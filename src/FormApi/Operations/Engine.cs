using System.Reflection;
using Forming.Plans;

namespace FormApi.Operations;

/// <summary>The engine that answers.</summary>
internal static class Engine
{
    /// <summary>Version of the calculation library.</summary>
    public static string Version { get; } =
        typeof(FormPlan).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}
