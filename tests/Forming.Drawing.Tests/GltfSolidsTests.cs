using System.Numerics;
using Forming.Drawing.Gltf;
using Forming.Drawing.Shapes;
using SharpGLTF.Schema2;
using SharpGLTF.Validation;

namespace Forming.Drawing.Tests;

public class GltfSolidsTests
{
    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void File_validates_and_spans_what_the_plan_spans(string name)
    {
        var job = Examples.All[name]();
        var model = Read(Written.Glb(job));
        Assert.Equal(["form", name == "mirrored-taper" ? "finished panel, first half" : "finished panel"], model.LogicalNodes.Select(node => node.Name));
        var form = Span(model.LogicalNodes[0]);
        var corners = job.Plan.Taper is { Solid: var solid }
            ? [.. solid.FormNear, .. solid.FormFar]
            : job.Plan.Form.Section.Vertices.SelectMany(p => new[] { new Point3(p.X, p.Y, 0), new Point3(p.X, p.Y, job.Form.WidthMm) }).ToArray();
        // The mold lines of the contact side stand out past round folds by a hair; the inside face reaches past them at a lead's end only.
        var room = (job.Plan.Taper is null ? 0.1 : 0) + job.Form.Sheet.ThicknessMm;
        Assert.InRange(form.Min.X * 1000, corners.Min(p => p.X) - room, corners.Min(p => p.X) + room);
        Assert.InRange(form.Max.X * 1000, corners.Max(p => p.X) - 0.1, corners.Max(p => p.X) + room);
        Assert.InRange(form.Min.Y * 1000, corners.Min(p => p.Y) - room, corners.Min(p => p.Y) + 0.1);
        Assert.InRange(form.Max.Y * 1000, corners.Max(p => p.Y) - 0.1, corners.Max(p => p.Y) + room);
        Assert.InRange(form.Max.Z * 1000, corners.Max(p => p.Z) - 0.01, corners.Max(p => p.Z) + room);
        if (job.Plan.Taper is not null)
            return;
        Assert.Equal(0, form.Min.Z);
        Assert.Equal(job.Form.WidthMm / 1000, form.Max.Z, 1e-6);
        Assert.Equal(job.Panel.WidthMm / 1000, Span(model.LogicalNodes[1]).Max.Z, 1e-6);
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Solids_are_closed_and_hold_the_metal_of_their_blanks(string name)
    {
        var job = Examples.All[name]();
        IsClosed(GltfSolids.Form(job));
        IsClosed(GltfSolids.Panel(job));
        var form = job.Plan.Form.Blank.AreaMm2 * job.Form.Sheet.ThicknessMm;
        Assert.Equal(form, Volume(GltfSolids.Form(job)), form * 0.012);
        if (job.Panel.Mirrored && job.Plan.Taper is not null)
            return; // the half that the form serves
        var trim = 2 * job.Panel.TrimMm * job.Panel.WidthMm * job.Panel.Sheet.ThicknessMm;
        var panel = (job.Plan.Panel.Blank.AreaMm2 * job.Panel.Sheet.ThicknessMm) - trim;
        Assert.Equal(panel, Volume(GltfSolids.Panel(job)), panel * 0.002);
    }

    // A lead of no length has two corners in one place, and no plane of its own.
    [Theory]
    [InlineData(80, 0)]
    [InlineData(0, 100)]
    [InlineData(0, 0)]
    [Trait("Category", "Long")]
    public void A_taper_without_a_lead_is_drawn_whole(double leadIn, double leadOut)
    {
        var job = Examples.BareCone(leadIn, leadOut);
        IsClosed(GltfSolids.Panel(job));
        Assert.NotEmpty(Written.Glb(job));
        Assert.NotEmpty(Written.Svg(job));
        Assert.NotEmpty(Written.Pdf(job));
    }

    [Fact]
    public void Equal_jobs_give_equal_bytes() => Assert.Equal(Written.Glb(Examples.SixFolds()), Written.Glb(Examples.SixFolds()));

    [ReaderFact]
    public void An_independent_validator_finds_nothing()
    {
        using var report = Readers.Run("read-gltf.cjs", Written.Glb(Examples.Mirrored()));
        Assert.Equal(0, report.RootElement.GetProperty("issues").GetProperty("numErrors").GetInt32());
        Assert.Equal(0, report.RootElement.GetProperty("issues").GetProperty("numWarnings").GetInt32());
    }

    private static ModelRoot Read(byte[] bytes) => ModelRoot.ParseGLB(bytes, new ReadSettings { Validation = ValidationMode.Strict });

    private static (Vector3 Min, Vector3 Max) Span(Node node)
    {
        var positions = node.Mesh.Primitives[0].GetVertexAccessor("POSITION").AsVector3Array();
        return (positions.Aggregate(Vector3.Min), positions.Aggregate(Vector3.Max));
    }

    // Every edge runs once each way: watertight and turned alike.
    private static void IsClosed(Solid solid)
    {
        var edges = new HashSet<(int, int)>();
        for (var i = 0; i < solid.Triangles.Count; i += 3)
        {
            for (var j = 0; j < 3; j++)
                Assert.True(edges.Add((solid.Triangles[i + j], solid.Triangles[i + ((j + 1) % 3)])));
        }

        Assert.All(edges, edge => Assert.Contains((edge.Item2, edge.Item1), edges));
    }

    private static double Volume(Solid solid)
    {
        double six = 0;
        for (var i = 0; i < solid.Triangles.Count; i += 3)
        {
            var (a, b, c) = (solid.Corners[solid.Triangles[i]], solid.Corners[solid.Triangles[i + 1]], solid.Corners[solid.Triangles[i + 2]]);
            six += a.Dot(b.Cross(c));
        }

        return six / 6;
    }
}
