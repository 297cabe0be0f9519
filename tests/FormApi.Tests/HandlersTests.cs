using System.Reflection;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FormApi.Tests;

/// <summary>A handler's type is its contract.</summary>
/// <param name="service">The service.</param>
public sealed class HandlersTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public void Every_handler_says_by_its_type_what_it_answers()
    {
        var handlers = Handlers();
        Assert.True(handlers.Count >= 20, $"{handlers.Count} handlers were found.");
        foreach (var (endpoint, handler) in handlers)
        {
            var results = ResultsOf(handler.ReturnType).ToArray();
            Assert.True(
                results.Length > 0 && results.All(result => typeof(IResult).IsAssignableFrom(result) && !result.IsInterface && !result.IsAbstract),
                $"{endpoint.DisplayName} returns {handler.ReturnType}.");
        }
    }

    [Fact]
    public void Every_answer_of_a_handler_is_in_its_description()
    {
        foreach (var (endpoint, handler) in Handlers())
        {
            var described = endpoint.Metadata.OfType<IProducesResponseTypeMetadata>().Where(response => response.StatusCode == 200).Select(response => response.Type).ToArray();
            foreach (var answer in ResultsOf(handler.ReturnType).Where(IsOfAnswer).Select(result => result.GetGenericArguments()[0]))
                Assert.Equal([answer], described);
        }
    }

    private static bool IsOfAnswer(Type result) => result.IsGenericType && result.GetGenericTypeDefinition() is { } definition
        && (definition == typeof(AnswerResult<>) || definition == typeof(TableResult<>));

    private List<(Endpoint Endpoint, MethodInfo Handler)> Handlers() =>
    [
        .. service.Services.GetRequiredService<EndpointDataSource>().Endpoints
            .Select(endpoint => (Endpoint: endpoint, Handler: endpoint.Metadata.GetMetadata<MethodInfo>()!))
            .Where(one => one.Handler?.DeclaringType!.Assembly == typeof(AnswerResult).Assembly),
    ];

    // What a handler may give: each of several, of a task or at once.
    private static IEnumerable<Type> ResultsOf(Type type)
    {
        if (!type.IsGenericType || (type.GetGenericTypeDefinition() != typeof(Task<>) && type.GetGenericTypeDefinition() != typeof(ValueTask<>) && !typeof(INestedHttpResult).IsAssignableFrom(type)))
            return [type];
        return type.GetGenericArguments().SelectMany(ResultsOf);
    }
}
