using System.Diagnostics;
using System.Text;
using FormApi.Contract;
using FormApi.Hosting;
using FormApi.Hosting.Settings;
using Microsoft.Extensions.Configuration;

namespace FormApi.Tests;

/// <summary>Settings: one table of them, and none that is misspelt or out of range gets past the start.</summary>
public sealed class SettingsTests
{
    private const string Head = "| setting (environment) | default | allowed | |\n|---|---|---|---|\n";

    [Fact]
    public void The_table_in_the_readme_is_made_from_the_settings()
    {
        var table = new StringBuilder(Head);
        foreach (var setting in Setting.All)
        {
            var none = setting.Default.Length == 0 ? "none" : setting.Default;
            table.Append($"| `{setting.Name}` | {none} | {setting.Allowed} | {XmlDocs.Summary(setting.Property)!.TrimEnd('.')} |\n");
        }

        var path = Repository.PathOf("README.md");
        var readme = File.ReadAllText(path);
        var start = readme.IndexOf(Head, StringComparison.Ordinal);
        Assert.True(start > 0);
        var end = readme.IndexOf("\n\n", start, StringComparison.Ordinal) + 1;
        if (Environment.GetEnvironmentVariable("UPDATE_CONTRACT") == "1")
            File.WriteAllText(path, readme[..start] + table + readme[end..]);
        else
            Assert.Equal(table.ToString(), readme[start..end]);
    }

    [Theory]
    [InlineData("Limits:Queud", "5", "Limits__Queud is not a setting of this service.", "Limits__Queued")]
    [InlineData("Limits:Seconds", "soon", "Limits__Seconds cannot be \"soon\".", "0.001 to 600")]
    [InlineData("Limits:Seconds", "0", "Limits__Seconds cannot be \"0\".", "0.001 to 600")]
    [InlineData("Limits:Queued", "2.5", "Limits__Queued cannot be \"2.5\".", "0 to 100000")]
    [InlineData("Access:Open", "yes", "Access__Open cannot be \"yes\".", "true, false")]
    [InlineData("Access:Keys:0:Sha256", "abc", "Access__Keys__0__Sha256 cannot be \"abc\".", "64 hexadecimal digits")]
    [InlineData("Access:Keys:0:Nam", "shop", "Access__Keys__0__Nam is not a setting of this service.", "Access__Keys__#__Name")]
    [InlineData("Links:PublicBaseUrl", "forms.example", "Links__PublicBaseUrl cannot be \"forms.example\".", "https://forms.example")]
    [InlineData("Links:PublicBaseUrl", "https://forms.example?x=1", "Links__PublicBaseUrl cannot be \"https://forms.example?x=1\".", "https://forms.example")]
    [InlineData("Cors:Origins:0", "*", "Cors__Origins__0 cannot be \"*\".", "https://shop.example")]
    [InlineData("Proxies:Networks:0", "everywhere", "Proxies__Networks__0 cannot be \"everywhere\".", "10.0.0.0/8")]
    public void A_setting_that_cannot_be_used_is_named_with_what_is_allowed(string key, string value, string first, string allowed)
    {
        var lines = Startup.WhyNot(Given((key, value)))!.Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.Equal(first, lines[0]);
        Assert.StartsWith("Allowed: ", lines[1], StringComparison.Ordinal);
        Assert.Contains(allowed, lines[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Limits:Seconds", "2.5")]
    [InlineData("limits:queued", "7")]
    [InlineData("Proxies:Networks:0", "fd00::/8")]
    [InlineData("Serilog:MinimumLevel:Default", "Debug")]
    public void Settings_that_can_be_used_and_those_of_others_are_let_through(string key, string value) =>
        Assert.Null(Startup.WhyNot(Given((key, value))));

    [Theory]
    [InlineData("urls", "http://0.0.0.0:8080", "http://0.0.0.0:8080")]
    [InlineData("urls", "http://localhost:1;https://forms.example:2", "https://forms.example:2")]
    [InlineData("http_ports", "8080", "http://+:8080")]
    [InlineData("Kestrel:Endpoints:Tls:Url", "https://*:8443", "https://*:8443")]
    public void Beyond_this_machine_it_does_not_start_before_somebody_says_who_may_call(string key, string value, string named)
    {
        Assert.StartsWith(named, Startup.WhyNot(Given((key, value))), StringComparison.Ordinal);
        Assert.NotNull(Startup.WhyNot(Given((key, value), ("Access:Jwt:Authority", ""), ("Access:KeysFile", ""))));
        Assert.Null(Startup.WhyNot(Given((key, value), ("Access:Open", "true"))));
        Assert.Null(Startup.WhyNot(Given((key, value), ("Access:Keys:0:Name", "shop"), ("Access:Keys:0:Sha256", new string('0', 64)))));
        Assert.Null(Startup.WhyNot(Given((key, value), ("Access:Jwt:Authority", "https://login.example"))));
    }

    [Theory]
    [InlineData("http://localhost:8080")]
    [InlineData("http://127.0.0.1:0")]
    [InlineData("http://[::1]:8080")]
    [InlineData("http://unix:/run/forms.sock")]
    public void On_this_machine_alone_it_is_open(string address) => Assert.Null(Startup.WhyNot(Given(("urls", address))));

    [Fact]
    public async Task A_bad_start_takes_two_lines_and_no_stack_trace()
    {
        var start = new ProcessStartInfo("dotnet", [typeof(Program).Assembly.Location]) { RedirectStandardError = true, RedirectStandardOutput = true };
        start.Environment["Limits__Queud"] = "5";
        using var service = Process.Start(start)!;
        var said = await service.StandardError.ReadToEndAsync();
        await service.WaitForExitAsync();
        Assert.Equal(1, service.ExitCode);
        Assert.Equal(2, said.TrimEnd().Split('\n').Length);
        Assert.Empty(await service.StandardOutput.ReadToEndAsync());
    }

    private static IConfiguration Given(params (string Key, string Value)[] settings) => new ConfigurationBuilder()
        .AddInMemoryCollection(settings.Select(setting => KeyValuePair.Create(setting.Key, (string?)setting.Value))).Build();
}
