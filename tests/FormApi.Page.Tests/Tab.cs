using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>A tab with the page in it. What its console says against it fails the test that closes it.</summary>
public sealed class Tab : IAsyncDisposable
{
    private readonly Uri _address;
    private readonly List<string> _complaints = [];

    public Tab(IPage page, Uri address)
    {
        (Page, _address) = (page, address);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning" && !message.Text.StartsWith("Service Worker registration blocked", StringComparison.Ordinal))
                _complaints.Add(message.Text);
        };
        page.PageError += (_, error) => _complaints.Add(error);
    }

    public IPage Page { get; }

    /// <summary>A refused job is an answer to the page; the browser notes its status all the same.</summary>
    public bool ExpectsRefusals { get; set; }

    public ILocator Verdict => Page.Locator(".verdict");

    public ILocator Part => Page.Locator("main");

    /// <summary>Opens a part and waits for its plan.</summary>
    /// <param name="part">Its name.</param>
    public async Task<Tab> At(string part)
    {
        await Page.GotoAsync(_address + "#" + part);
        await Planned();
        return this;
    }

    /// <summary>Goes on to another part of the same job.</summary>
    /// <param name="title">Its title.</param>
    public Task GoTo(string title) => Page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new() { Name = title }).ClickAsync();

    /// <summary>Waits until what was asked for is planned.</summary>
    public Task Planned() => Page.WaitForFunctionAsync("() => document.querySelector('.verdict, [data-part]') && document.documentElement.dataset.busy === 'no'");

    /// <summary>The field of a place in the request, named as JSON pointers name it.</summary>
    /// <param name="place">The place.</param>
    public ILocator Field(string place) => Page.Locator($"[data-pointer='{place}']");

    /// <summary>Does something that plans, and waits for the plan.</summary>
    public async Task<JsonNode> PlannedBy(Func<Task> act)
    {
        var answered = Page.WaitForResponseAsync(response => response.Url.EndsWith("/v1/forms", StringComparison.Ordinal));
        await act();
        var answer = JsonNode.Parse(await (await answered).TextAsync())!;
        await Planned();
        return answer;
    }

    public async ValueTask DisposeAsync()
    {
        var held = _complaints.Where(text => !ExpectsRefusals || !text.StartsWith("Failed to load resource", StringComparison.Ordinal)).ToArray();
        await Page.Context.DisposeAsync();
        Assert.Empty(held);
    }
}
