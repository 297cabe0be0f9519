using System.Text.Json;

// The floor to measure against: reads any JSON body and writes one answer of a given size, through the framework's own JSON.
var answer = JsonElement.Parse(File.ReadAllBytes(args[0]));
var builder = WebApplication.CreateSlimBuilder();
builder.Logging.ClearProviders();
var app = builder.Build();
app.MapPost("/echo", (JsonElement body) => body.ValueKind == JsonValueKind.Object ? Results.Json(answer) : Results.BadRequest());
app.Run(args[1]);
