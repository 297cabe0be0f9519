using FormApi.Contract;
using FormApi.Features.Allowance;
using FormApi.Features.Batches;
using FormApi.Features.Comparisons;
using FormApi.Features.Corrections;
using FormApi.Features.Drawings;
using FormApi.Features.Estimates;
using FormApi.Features.Forms;
using FormApi.Features.Gauges;
using FormApi.Features.Inspections;
using FormApi.Features.Links;
using FormApi.Features.Materials;
using FormApi.Features.Predictions;
using FormApi.Features.Programs;
using FormApi.Features.References;
using FormApi.Features.TestStrips;
using FormApi.Features.Tolerances;
using FormApi.Features.Verification;
using FormApi.Hosting;
using FormApi.Hosting.Access;
using FormApi.Hosting.Settings;
using FormApi.Page;
using Serilog;

if (args is ["--new-key", ..])
{
    var (key, line) = ApiKeys.New(args.ElementAtOrDefault(1) ?? "caller");
    Console.WriteLine($"{key}\n{line}");
    return 0;
}
if (await Probe.ExitCodeAsync(args) is { } code)
    return code;

// Settings lie beside the service, from wherever it is started.
var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
if (Startup.WhyNot(builder.Configuration) is { } fault)
{
    Console.Error.WriteLine(fault);
    return 1;
}

builder.Services.AddSerilog((_, log) => log.ReadFrom.Configuration(builder.Configuration), preserveStaticLogger: true);
builder.AddDefaultAddress();
builder.AddAccess();
builder.AddSafeHeaders();
builder.AddTelemetry();
builder.AddRequestPipeline();
builder.AddContract();
builder.AddVerification();
builder.AddBatches();

var app = builder.Build();
app.UseRequestPipeline();
app.MapProblems();
app.MapHealth();
app.MapBenchPage();
app.MapScope(Scopes.Docs).MapContract();
app.MapScope(Scopes.Scrape).MapMetrics();

var calls = app.MapScope(Scopes.Compute);
calls.MapMaterials();
calls.MapGauges();
calls.MapReferences();
calls.MapVerification();
calls.MapLimits();
calls.MapBatches();
calls.MapComparisons();
calls.MapPageCalls();

var computations = calls.MapComputations();
computations.MapForms();
computations.MapDrawings();
computations.MapPredictions();
computations.MapPrograms();
computations.MapTestStrips();
computations.MapTolerances();
computations.MapInspections();
computations.MapCorrections();
computations.MapEstimates();
computations.MapLinks();

app.SayWhatStarts();
app.Run();
return 0;
