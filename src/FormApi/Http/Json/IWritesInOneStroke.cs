namespace FormApi.Http.Json;

/// <summary>A converter that writes a whole list by itself, for speed; the fields of its items are known otherwise too.</summary>
internal interface IWritesInOneStroke;
