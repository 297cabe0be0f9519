namespace FormApi.Http.Json;

/// <summary>A context whose types are requests; the others hold answers.</summary>
internal interface IReadsRequests;
