using System.Reflection;
using Forming;

namespace FormApi.Http;

/// <summary>The engine that answers.</summary>
internal static class EngineVersion
{
    /// <summary>Version of the calculation library.</summary>
    public static string Current { get; } =
        typeof(Angle).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}
