using FormApi.Http.Problems;

namespace FormApi.Http.Results;

/// <summary>How results say what they answer with in the endpoint's description, and so in the contract.</summary>
internal static class AnswerMetadata
{
    /// <summary>Adds an answer, and the problem that the caller takes none of its media types.</summary>
    /// <param name="endpoint">The endpoint being built.</param>
    /// <param name="type">Type of the answer.</param>
    /// <param name="media">Media types it is answered in, best first.</param>
    public static void Add(EndpointBuilder endpoint, Type type, params string[] media)
    {
        endpoint.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, type, media));
        endpoint.Metadata.Add(new MediaTypes(media));
        ProblemMetadata.Add(endpoint, StatusCodes.Status406NotAcceptable);
    }
}
