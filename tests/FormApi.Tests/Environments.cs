namespace FormApi.Tests;

/// <summary>The service as it runs for its developers and as it runs for its callers.</summary>
public sealed class Environments : IDisposable
{
    public Service Development { get; } = Service.In("Development");

    public Service Production { get; } = Service.In("Production");

    public IEnumerable<Service> Both => [Development, Production];

    public void Dispose()
    {
        Development.Dispose();
        Production.Dispose();
    }
}
