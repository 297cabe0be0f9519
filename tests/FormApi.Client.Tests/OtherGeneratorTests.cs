using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using NJsonSchema.CodeGeneration.CSharp;
using NSwag;
using NSwag.CodeGeneration.CSharp;

namespace FormApi.Client.Tests;

/// <summary>A client by another generator: made from the served contract, compiled, and used.</summary>
public sealed class OtherGeneratorTests(Caller caller) : IClassFixture<Caller>
{
    private const string Space = "Made";

    [Fact]
    [Trait("Category", "Long")]
    public async Task It_compiles_draws_files_and_sends_an_arc()
    {
        var made = Compile(await Generate());

        foreach (var method in new[] { "DrawFormAsync", "OpenDrawingLinkAsync" })
        {
            var answers = made.GetType(Space + ".MadeClient")!.GetMethods().Where(candidate => candidate.Name == method).Select(candidate => candidate.ReturnType).ToArray();
            Assert.NotEmpty(answers);
            Assert.All(answers, answer => Assert.Equal("FileResponse", Assert.Single(answer.GetGenericArguments()).Name));
        }

        var curve = made.GetType(Space + ".CurveInput")!;
        Assert.Equal(curve, made.GetType(Space + ".PanelInput")!.GetProperty("Curve")!.PropertyType);
        var arc = Activator.CreateInstance(made.GetType(Space + ".ArcInput")!)!;
        arc.GetType().GetProperty("Radius")!.SetValue(arc, 90.0);
        arc.GetType().GetProperty("Sweep")!.SetValue(arc, 45.0);
        var sent = JsonNode.Parse(JsonSerializer.Serialize(arc, curve))!;
        // This generator writes what is not given as null, which the service reads as not given.
        foreach (var (name, _) in sent.AsObject().Where(field => field.Value is null).ToArray())
            sent.AsObject().Remove(name);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse("""{"type":"arc","radius":90,"sweep":45}"""), sent), sent.ToJsonString());
        Assert.IsType(arc.GetType(), JsonSerializer.Deserialize(sent.ToJsonString(), curve));
    }

    private async Task<string> Generate()
    {
        var contract = await OpenApiDocument.FromJsonAsync(await caller.Contract());
        var settings = new CSharpClientGeneratorSettings { ClassName = "MadeClient", UseBaseUrl = false };
        settings.CSharpGeneratorSettings.Namespace = Space;
        settings.CSharpGeneratorSettings.JsonLibrary = CSharpJsonLibrary.SystemTextJson;
        settings.CSharpGeneratorSettings.JsonPolymorphicSerializationStyle = CSharpJsonPolymorphicSerializationStyle.SystemTextJson;
        return new CSharpClientGenerator(contract, settings).GenerateFile();
    }

    private static Assembly Compile(string code)
    {
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create(Space, [CSharpSyntaxTree.ParseText(code)], references, new(OutputKind.DynamicallyLinkedLibrary));
        using var bytes = new MemoryStream();
        var result = compilation.Emit(bytes);
        Assert.True(result.Success, string.Join('\n', result.Diagnostics.Where(fault => fault.Severity == DiagnosticSeverity.Error).Take(10)));
        return Assembly.Load(bytes.ToArray());
    }
}
