namespace FormApi.Tests;

/// <summary>What a kustomization says, as far as ours do.</summary>
public sealed record Kustomization
{
    public string ApiVersion { get; init; } = "";

    public string Kind { get; init; } = "";

    public string[] Resources { get; init; } = [];

    public LabelSet[] Labels { get; init; } = [];

    public NamedImage[] Images { get; init; } = [];

    public GeneratedMap[] ConfigMapGenerator { get; init; } = [];

    public sealed record LabelSet
    {
        public Dictionary<string, string> Pairs { get; init; } = [];

        public bool IncludeSelectors { get; init; }
    }

    public sealed record NamedImage
    {
        public string Name { get; init; } = "";

        public string NewTag { get; init; } = "";
    }

    public sealed record GeneratedMap
    {
        public string Name { get; init; } = "";

        public string[] Files { get; init; } = [];

        public MapOptions? Options { get; init; }
    }

    public sealed record MapOptions
    {
        public Dictionary<string, string> Labels { get; init; } = [];
    }
}

/// <summary>A kind that others define.</summary>
/// <typeparam name="TSpec">What it says.</typeparam>
public sealed record Custom<TSpec>
    where TSpec : new()
{
    public string ApiVersion { get; init; } = "";

    public string Kind { get; init; } = "";

    public CustomMetadata Metadata { get; init; } = new();

    public TSpec Spec { get; init; } = new();
}

/// <summary>What a kind that others define is called.</summary>
public sealed record CustomMetadata
{
    public string Name { get; init; } = "";
}

/// <summary>What the Prometheus operator is to scrape.</summary>
public sealed record ServiceMonitorSpec
{
    public LabelSelector Selector { get; init; } = new();

    public Endpoint[] Endpoints { get; init; } = [];

    public sealed record LabelSelector
    {
        public Dictionary<string, string> MatchLabels { get; init; } = [];
    }

    public sealed record Endpoint
    {
        public string Port { get; init; } = "";

        public string Path { get; init; } = "";

        public string Interval { get; init; } = "";

        public SafeAuthorization? Authorization { get; init; }
    }

    public sealed record SafeAuthorization
    {
        public string Type { get; init; } = "";

        public SecretKey Credentials { get; init; } = new();
    }

    public sealed record SecretKey
    {
        public string Name { get; init; } = "";

        public string Key { get; init; } = "";
    }
}

/// <summary>What the Prometheus operator is to record and to alert of.</summary>
public sealed record RuleSpec
{
    public Group[] Groups { get; init; } = [];

    public sealed record Group
    {
        public string Name { get; init; } = "";

        public Rule[] Rules { get; init; } = [];
    }

    public sealed record Rule
    {
        public string? Record { get; init; }

        public string? Alert { get; init; }

        public string Expr { get; init; } = "";

        public string? For { get; init; }

        public Dictionary<string, string> Labels { get; init; } = [];

        public Dictionary<string, string> Annotations { get; init; } = [];
    }
}

/// <summary>What a gateway lets through.</summary>
public sealed record RouteSpec
{
    public Parent[] ParentRefs { get; init; } = [];

    public string[] Hostnames { get; init; } = [];

    public Rule[] Rules { get; init; } = [];

    public sealed record Parent
    {
        public string Name { get; init; } = "";

        public string Namespace { get; init; } = "";
    }

    public sealed record Rule
    {
        public Match[] Matches { get; init; } = [];

        public Backend[] BackendRefs { get; init; } = [];
    }

    public sealed record Match
    {
        public PathMatch Path { get; init; } = new();
    }

    public sealed record PathMatch
    {
        public string Type { get; init; } = "";

        public string Value { get; init; } = "";
    }

    public sealed record Backend
    {
        public string Name { get; init; } = "";

        public int Port { get; init; }
    }
}
