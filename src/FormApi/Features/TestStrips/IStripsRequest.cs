using FormApi.Http.Requests;

namespace FormApi.Features.TestStrips;

/// <summary>A request about test strips.</summary>
/// <typeparam name="TSelf">The request's own type.</typeparam>
internal interface IStripsRequest<TSelf> : IRequestBody<TSelf>
    where TSelf : class, IStripsRequest<TSelf>
{
    /// <summary>The request with every default shown, still in the caller's units.</summary>
    TSelf WithDefaults();
}
