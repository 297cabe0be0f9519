using System.Buffers.Binary;
using Forming.Drawing.Shapes;
using Forming.Results;
using SharpGLTF.Schema2;

namespace Forming.Drawing.Gltf;

/// <summary>The form and the finished panel as solids in a binary glTF file: metres, right-handed, y up, z along the folds.</summary>
public static class GltfSolids
{
    private const double MetresPerMm = 1e-3;

    /// <summary>Writes the solids, both where they lie while the panel's lead-in is clamped.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stream">Where to write; stays open.</param>
    public static void Write(DrawingJob job, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        var model = ModelRoot.CreateModel();
        model.Asset.Generator = "FormApi";
        model.Asset.Copyright = null;
        var scene = model.UseScene(0);
        scene.Name = job.Title;
        model.DefaultScene = scene;
        Add(model, "form", Form(job), 0.55f);
        var isHalf = job.Panel.Mirrored && job.Plan.Taper is not null;
        Add(model, isHalf ? "finished panel, first half" : "finished panel", Panel(job), 0.85f);
        stream.Write(model.WriteGLB(new WriteSettings()).AsSpan());
    }

    /// <summary>The form as a solid.</summary>
    /// <param name="job">The job.</param>
    internal static Solid Form(DrawingJob job) => Solid.Of(FormShape.Of(job));

    /// <summary>The finished panel as a solid.</summary>
    /// <param name="job">The job.</param>
    internal static Solid Panel(DrawingJob job) => Solid.Of(PanelShape.Whole(job));

    private static void Add(ModelRoot model, string name, Solid solid, float grey)
    {
        var material = model.CreateMaterial(name);
        material.InitializePBRMetallicRoughness();
        var colour = material.FindChannel("BaseColor")!.Value;
        colour.Color = new(grey, grey, grey, 1);
        // No normals: every facet then shows flat, and each corner stays one corner of a closed mesh.
        var mesh = model.CreateMesh(name);
        var primitive = mesh.CreatePrimitive();
        primitive.Material = material;
        primitive.SetVertexAccessor("POSITION", Positions(model, solid));
        primitive.SetIndexAccessor(Indices(model, solid));
        var node = model.DefaultScene.CreateNode(name);
        node.Mesh = mesh;
    }

    private static Accessor Positions(ModelRoot model, Solid solid)
    {
        var bytes = new byte[12 * solid.Corners.Count];
        for (var i = 0; i < solid.Corners.Count; i++)
        {
            var place = bytes.AsSpan(12 * i);
            BinaryPrimitives.WriteSingleLittleEndian(place, (float)(Finite.Of(solid.Corners[i].X) * MetresPerMm));
            BinaryPrimitives.WriteSingleLittleEndian(place[4..], (float)(Finite.Of(solid.Corners[i].Y) * MetresPerMm));
            BinaryPrimitives.WriteSingleLittleEndian(place[8..], (float)(Finite.Of(solid.Corners[i].Z) * MetresPerMm));
        }

        var view = model.UseBufferView(bytes, 0, bytes.Length, 0, BufferMode.ARRAY_BUFFER);
        var accessor = model.CreateAccessor();
        accessor.SetVertexData(view, 0, solid.Corners.Count, new SharpGLTF.Memory.AttributeFormat(DimensionType.VEC3));
        accessor.UpdateBounds();
        return accessor;
    }

    private static Accessor Indices(ModelRoot model, Solid solid)
    {
        var bytes = new byte[4 * solid.Triangles.Count];
        for (var i = 0; i < solid.Triangles.Count; i++)
            BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(4 * i), solid.Triangles[i]);
        var view = model.UseBufferView(bytes, 0, bytes.Length, 0, BufferMode.ELEMENT_ARRAY_BUFFER);
        var accessor = model.CreateAccessor();
        accessor.SetIndexData(view, 0, solid.Triangles.Count, IndexEncodingType.UNSIGNED_INT);
        return accessor;
    }
}
