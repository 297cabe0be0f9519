using FormApi.Contract;
using FormApi.Features.Batches;
using FormApi.Features.Comparisons;
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
using Serilog;

if (await Probe.ExitCodeAsync(args) is { } code)
    return code;

// Settings lie beside the service, from wherever it is started.
var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
builder.Services.AddSerilog((_, log) => log.ReadFrom.Configuration(builder.Configuration), preserveStaticLogger: true);
builder.AddDefaultAddress();
builder.AddTelemetry();
builder.AddRequestPipeline();
builder.AddContract();
builder.AddVerification();
builder.AddBatches();

var app = builder.Build();
app.UseRequestPipeline();
app.MapContract();
app.MapProblems();
app.MapHealth();
app.MapMetrics();
app.MapMaterials();
app.MapGauges();
app.MapReferences();
app.MapVerification();

var computations = app.MapComputations();
computations.MapForms();
computations.MapDrawings();
computations.MapPredictions();
computations.MapPrograms();
computations.MapTestStrips();
computations.MapTolerances();
computations.MapInspections();
computations.MapEstimates();
computations.MapLinks();
app.MapBatches();
app.MapComparisons();

app.Run();
return 0;
