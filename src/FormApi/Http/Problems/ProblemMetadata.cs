using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Http.Problems;

/// <summary>How whatever refuses a request says so in the endpoint's description, and so in the contract.</summary>
internal static class ProblemMetadata
{
    /// <summary>Adds the statuses of problems that the endpoint may answer with, each once.</summary>
    /// <param name="endpoint">The endpoint being built.</param>
    /// <param name="statuses">HTTP statuses.</param>
    public static void Add(EndpointBuilder endpoint, params ReadOnlySpan<int> statuses)
    {
        foreach (var status in statuses)
        {
            if (!endpoint.Metadata.OfType<IProducesResponseTypeMetadata>().Any(known => known.StatusCode == status))
                endpoint.Metadata.Add(new ProducesResponseTypeMetadata(status, typeof(Problem), [ProblemResult.MediaType]));
        }
    }
}
