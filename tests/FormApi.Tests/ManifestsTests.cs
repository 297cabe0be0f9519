using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FormApi.Hosting.Settings;
using k8s;
using k8s.Models;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace FormApi.Tests;

/// <summary>
/// The manifests that are shipped. Kubernetes' own kinds are read by its client's models, where a field that is not known fails; kinds of others
/// by the small records below, which hold what the manifests use and nothing else, from memory of their published schemas.
/// </summary>
[Collection(Alone.Name)]
public sealed partial class ManifestsTests
{
    private static readonly Dictionary<string, Type> OfOthers = new()
    {
        ["kustomize.config.k8s.io/v1beta1/Kustomization"] = typeof(Kustomization),
        ["monitoring.coreos.com/v1/ServiceMonitor"] = typeof(Custom<ServiceMonitorSpec>),
        ["monitoring.coreos.com/v1/PrometheusRule"] = typeof(Custom<RuleSpec>),
        ["gateway.networking.k8s.io/v1/HTTPRoute"] = typeof(Custom<RouteSpec>),
    };

    private static readonly IDeserializer Strict =
        new DeserializerBuilder().WithNamingConvention(CamelCaseNamingConvention.Instance).WithDuplicateKeyChecking().Build();

    private static readonly (string Path, object Manifest)[] All =
        [.. Directory.GetFiles(Repository.PathOf("src", "deploy"), "*.yaml", SearchOption.AllDirectories).Select(path => (path, Read(path)))];

    [Fact]
    public void Every_manifest_is_of_a_known_kind_and_has_known_fields_only()
    {
        Assert.True(All.Length >= 13, $"{All.Length} manifests");
        Assert.Equal(
            ["Deployment", "HTTPRoute", "HorizontalPodAutoscaler", "Job", "Kustomization", "NetworkPolicy", "PodDisruptionBudget", "PrometheusRule", "Service", "ServiceMonitor"],
            All.Select(one => KindOf(File.ReadAllText(one.Path)).Split('/')[^1]).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("base/deployment.yaml", "replicas:", "replica:")]
    [InlineData("base/deployment.yaml", "readOnlyRootFilesystem:", "readOnlyRootFileSystem:")]
    [InlineData("base/scaling.yaml", "averageUtilization:", "averageUtilisation:")]
    [InlineData("monitoring/servicemonitor.yaml", "interval:", "intervall:")]
    [InlineData("gateway/route.yaml", "backendRefs:", "backends:")]
    public void A_field_that_nobody_knows_fails(string file, string field, string misspelt)
    {
        var text = File.ReadAllText(Repository.PathOf(["src", "deploy", .. file.Split('/')]));
        Assert.Contains(field, text, StringComparison.Ordinal);
        Assert.ThrowsAny<Exception>(() => Parse(text.Replace(field, misspelt, StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_file_beside_a_kustomization_is_in_it()
    {
        foreach (var (path, manifest) in All.Where(one => one.Manifest is Kustomization))
        {
            var kustomization = (Kustomization)manifest;
            var named = kustomization.Resources.Concat(kustomization.ConfigMapGenerator.SelectMany(map => map.Files)).Append("kustomization.yaml");
            Assert.Equal(Directory.GetFiles(Path.GetDirectoryName(path)!).Select(Path.GetFileName).Order(), named.Order());
        }
    }

    [Fact]
    public void The_image_is_of_this_version()
    {
        var version = VersionElement().Match(File.ReadAllText(Repository.PathOf("Directory.Build.props"))).Groups[1].Value;
        Assert.Equal(version, One<Kustomization>("base").Images.Single().NewTag);
    }

    [Fact]
    public void Whatever_points_at_the_pods_finds_them()
    {
        var deployment = One<V1Deployment>("base");
        var labels = deployment.Spec.Template.Metadata.Labels;
        foreach (var selector in new[]
        {
            deployment.Spec.Selector.MatchLabels,
            One<V1Service>("base").Spec.Selector,
            One<V1PodDisruptionBudget>("base").Spec.Selector.MatchLabels,
            One<V1NetworkPolicy>("base").Spec.PodSelector.MatchLabels,
        })
        {
            Assert.NotEmpty(selector);
            Assert.All(selector, pair => Assert.Equal(pair.Value, labels[pair.Key]));
        }

        var monitor = One<Custom<ServiceMonitorSpec>>("monitoring").Spec;
        Assert.All(monitor.Selector.MatchLabels, pair => Assert.Equal(pair.Value, One<V1Service>("base").Metadata.Labels[pair.Key]));
        Assert.Equal(deployment.Metadata.Name, One<V2HorizontalPodAutoscaler>("base").Spec.ScaleTargetRef.Name);
        // A job's pods are others.
        Assert.NotEqual(labels["app.kubernetes.io/name"], One<V1Job>("batch").Spec.Template.Metadata.Labels["app.kubernetes.io/name"]);
    }

    [Fact]
    public void A_pod_may_do_nothing_that_it_need_not()
    {
        foreach (var pod in new[] { One<V1Deployment>("base").Spec.Template.Spec, One<V1Job>("batch").Spec.Template.Spec })
        {
            Assert.True(pod.SecurityContext.RunAsNonRoot);
            Assert.False(pod.AutomountServiceAccountToken);
            var container = Assert.Single(pod.Containers);
            Assert.True(container.SecurityContext.ReadOnlyRootFilesystem);
            Assert.False(container.SecurityContext.AllowPrivilegeEscalation);
            Assert.Equal(["ALL"], container.SecurityContext.Capabilities.Drop);
            Assert.True(container.Resources.Requests.ContainsKey("cpu") && container.Resources.Requests.ContainsKey("memory"));
            Assert.True(container.Resources.Limits.ContainsKey("memory"));
        }
    }

    [Fact]
    public void A_pod_that_stops_is_given_the_time_that_it_asks_for()
    {
        var pod = One<V1Deployment>("base").Spec.Template.Spec;
        var asked = pod.Containers[0].Env.Where(one => one.Name.StartsWith("Drain__", StringComparison.Ordinal)).Sum(one => int.Parse(one.Value, System.Globalization.CultureInfo.InvariantCulture));
        Assert.InRange(asked, 1, pod.TerminationGracePeriodSeconds!.Value - 5);
    }

    [Fact]
    public async Task Probes_scrapes_and_routes_ask_for_what_the_service_has()
    {
        using var service = Service.OnPort();
        var container = One<V1Deployment>("base").Spec.Template.Spec.Containers[0];
        foreach (var probe in new[] { container.StartupProbe, container.ReadinessProbe, container.LivenessProbe })
        {
            using var answer = await service.Client.GetAsync(probe.HttpGet.Path);
            Assert.True(answer.IsSuccessStatusCode, probe.HttpGet.Path);
            Assert.Equal(container.Ports.Single().Name, probe.HttpGet.Port.Value);
        }

        var scraped = Assert.Single(One<Custom<ServiceMonitorSpec>>("monitoring").Spec.Endpoints);
        Assert.Equal(One<V1Service>("base").Spec.Ports.Single().Name, scraped.Port);
        using var figures = await service.Client.GetAsync(scraped.Path);
        Assert.True(figures.IsSuccessStatusCode);

        var routes = service.Services.GetServices<EndpointDataSource>().SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Select(route => "/" + route.RoutePattern.RawText!.TrimStart('/')).Distinct().ToArray();
        var routed = One<Custom<RouteSpec>>("gateway").Spec.Rules.SelectMany(rule => rule.Matches).Select(match => match.Path.Value).ToArray();
        Assert.All(routed, prefix => Assert.Contains(routes, route => IsUnder(route, prefix)));
        // All but what is for the cluster.
        Assert.All(routes.Where(route => !routed.Any(prefix => IsUnder(route, prefix))), route => Assert.Matches("^/(metrics|health/.*|)$", route));
    }

    [Fact]
    public async Task Alerts_and_the_dashboard_ask_for_figures_that_there_are()
    {
        using var service = Service.OnPort();
        using (await service.Post("/v1/forms", "{}")) { }
        using (await service.Client.GetAsync("/health/ready")) { }
        await service.Form(Requests.Arc());
        var figures = await service.Client.GetStringAsync("/metrics");
        var rules = One<Custom<RuleSpec>>("monitoring").Spec.Groups.SelectMany(group => group.Rules).ToArray();
        var dashboard = JsonNode.Parse(File.ReadAllText(Repository.PathOf("src", "deploy", "monitoring", "dashboard.json")))!;
        var asked = dashboard["panels"]!.AsArray().SelectMany(panel => panel!["targets"]?.AsArray().ToArray() ?? []).Select(target => (string)target!["expr"]!).ToArray();
        Assert.True(asked.Length >= 10, $"{asked.Length} queries");
        var recorded = rules.Select(rule => rule.Record).OfType<string>().ToHashSet();
        Assert.Contains(One<V2HorizontalPodAutoscaler>("base").Spec.Metrics.Single(metric => metric.Pods is not null).Pods.Metric.Name, recorded);
        foreach (var expression in rules.Select(rule => rule.Expr).Concat(asked))
        {
            var names = FigureName().Matches(Grouping().Replace(expression, "")).Select(match => match.Value).Where(name => !recorded.Contains(name)).ToArray();
            Assert.All(names, name => Assert.Contains("\n" + name + "{", figures, StringComparison.Ordinal));
            Assert.True(names.Length > 0 || recorded.Any(expression.Contains), expression);
            var labels = LabelName().Matches(expression).Select(match => match.Groups[1].Value);
            Assert.All(labels, label => Assert.Contains(label + "=\"", figures, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_setting_of_a_pod_is_one_of_the_services()
    {
        var env = One<V1Deployment>("base").Spec.Template.Spec.Containers[0].Env;
        Assert.NotEmpty(env);
        Assert.All(env, one => Assert.True(Setting.All.Single(known => known.Name == one.Name).Takes(one.Value), one.Name));
        // The key that callers show, where the pods look for those that are let in.
        Assert.StartsWith(
            One<V1Deployment>("base").Spec.Template.Spec.Containers[0].VolumeMounts.Single().MountPath + "/",
            env.Single(one => one.Name == "Access__KeysFile").Value,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_scraper_shows_its_key_as_its_manifest_says()
    {
        const string Key = "scrapers-own";
        using var service = Service.OnPort(
            ("Access:Keys:0:Name", "scraper"),
            ("Access:Keys:0:Sha256", Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(Key)))),
            ("Access:Keys:0:Scopes", "metrics"));
        var endpoint = Assert.Single(One<Custom<ServiceMonitorSpec>>("monitoring").Spec.Endpoints);
        foreach (var (key, status) in new[] { (Key, HttpStatusCode.OK), ("another", HttpStatusCode.Unauthorized) })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, endpoint.Path);
            request.Headers.Authorization = new(endpoint.Authorization!.Type, key);
            using var answer = await service.Client.SendAsync(request);
            Assert.Equal(status, answer.StatusCode);
        }
    }

    private static bool IsUnder(string route, string prefix) => route == prefix || route.StartsWith(prefix + "/", StringComparison.Ordinal);

    private static T One<T>(string folder) =>
        (T)All.Single(one => one.Manifest is T && Path.GetFileName(Path.GetDirectoryName(one.Path)) == folder).Manifest;

    private static object Read(string path)
    {
        try
        {
            return Parse(File.ReadAllText(path));
        }
        catch (Exception unreadable)
        {
            throw new InvalidDataException($"{path}: {unreadable.Message}", unreadable);
        }
    }

    private static object Parse(string text) => OfOthers.TryGetValue(KindOf(text), out var type)
        ? Strict.Deserialize(text, type)!
        : KubernetesYaml.LoadAllFromString(text, null, strict: true).Single();

    private static string KindOf(string text) => $"{ApiVersion().Match(text).Groups[1].Value}/{Kind().Match(text).Groups[1].Value}";

    [GeneratedRegex(@"<Version>(.*)</Version>")]
    private static partial Regex VersionElement();

    [GeneratedRegex(@"(?m)^apiVersion: (\S+)$")]
    private static partial Regex ApiVersion();

    [GeneratedRegex(@"(?m)^kind: (\S+)$")]
    private static partial Regex Kind();

    [GeneratedRegex(@"\b(http_server|formapi|forming|dotnet|kestrel)_[a-z0-9_]+(?=[\[{) ]|$)")]
    private static partial Regex FigureName();

    [GeneratedRegex(@"\b(by|on) \([^)]*\)")]
    private static partial Regex Grouping();

    [GeneratedRegex(@"[{,]\s*([a-z_]+)\s*(?:=~|!=|=)")]
    private static partial Regex LabelName();
}
