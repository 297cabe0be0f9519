namespace FormApi.Tests;

/// <summary>Tests that measure what the whole process uses, so that nothing may run beside them.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
