using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Forms;

/// <summary>Writes stations in one stroke: they hold most of an answer's numbers. The contract's test holds it to the schema.</summary>
internal sealed class StationsConverter : JsonConverter<StationResult[]>, IWritesInOneStroke
{
    // The names of all fields, and the numbers of a tapered station.
    private const int LongestStation = 564 + (35 * NumberText.Longest);

    /// <inheritdoc/>
    public override StationResult[] Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, StationResult[] value, JsonSerializerOptions options)
    {
        var rented = ArrayPool<byte>.Shared.Rent(
            (value.Length * LongestStation) + value.Sum(
                station => Encoding.UTF8.GetMaxByteCount(
                    station.MarkText.Length + station.SightLineText.Length + (station.MarkTextFar?.Length ?? 0))) + 2);
        var text = new Text(rented);
        text.Put("["u8);
        for (var i = 0; i < value.Length; i++)
        {
            if (i > 0)
                text.Put(","u8);
            Write(ref text, value[i]);
        }

        text.Put("]"u8);
        writer.WriteRawValue(text.Written, skipInputValidation: true);
        ArrayPool<byte>.Shared.Return(rented);
    }

    private static void Write(ref Text text, StationResult station)
    {
        text.Put("{\"number\":"u8, station.Number);
        text.Put(",\"at\":"u8, station.At);
        text.Put(",\"mark\":"u8, station.Mark);
        text.Put(",\"markText\":\""u8);
        // Digits, spaces, a sign and a slash: nothing to escape.
        text.Put(station.MarkText);
        text.Put("\",\"tangentLines\":["u8, station.TangentLines.First);
        text.Put(","u8, station.TangentLines.Second);
        text.Put("],\"sightLine\":"u8, station.SightLine);
        text.Put(",\"sightLineText\":\""u8);
        text.Put(station.SightLineText);
        text.Put("\""u8);
        text.Put(",\"angle\":"u8, station.Angle);
        text.Put(",\"runningAngle\":"u8, station.RunningAngle);
        text.Put(",\"stopAngle\":"u8, station.StopAngle);
        text.Put(",\"stopSetting\":"u8, station.StopSetting);
        text.Put(",\"radius\":"u8, station.Radius);
        text.Put(",\"facetAfter\":"u8, station.FacetAfter);
        text.Put(",\"straightAfter\":"u8, station.StraightAfter);
        if (station is { Near: { } near, Far: { } far })
            WriteLine(ref text, station, near, far);
        text.Put("}"u8);
    }

    private static void WriteLine(ref Text text, StationResult station, Pair near, Pair far)
    {
        text.Put(",\"near\":"u8, near);
        text.Put(",\"far\":"u8, far);
        text.Put(",\"baseNear\":"u8, station.BaseNear);
        text.Put(",\"baseFar\":"u8, station.BaseFar);
        text.Put(",\"markTextFar\":\""u8);
        text.Put(station.MarkTextFar!);
        text.Put("\",\"length\":"u8, station.Length);
        text.Put(",\"straightEnds\":"u8, station.StraightEnds!.Value);
        text.Put(",\"facetEnds\":"u8, station.FacetEnds!.Value);
        text.Put(",\"firstTangent\":["u8, station.FirstTangent![0]);
        text.Put(","u8, station.FirstTangent[1]);
        text.Put("],\"secondTangent\":["u8, station.SecondTangent![0]);
        text.Put(","u8, station.SecondTangent[1]);
        text.Put("]"u8);
    }

    /// <summary>A growing piece of JSON in a buffer that is large enough.</summary>
    /// <param name="buffer">The buffer.</param>
    private ref struct Text(Span<byte> buffer)
    {
        private readonly Span<byte> _buffer = buffer;
        private int _length;

        public readonly ReadOnlySpan<byte> Written => _buffer[.._length];

        public void Put(ReadOnlySpan<byte> piece)
        {
            piece.CopyTo(_buffer[_length..]);
            _length += piece.Length;
        }

        public void Put(string piece) => _length += Encoding.UTF8.GetBytes(piece, _buffer[_length..]);

        public void Put(ReadOnlySpan<byte> name, Pair pair)
        {
            Put(name);
            Put("["u8, pair.First);
            Put(","u8, pair.Second);
            Put("]"u8);
        }

        public void Put(ReadOnlySpan<byte> name, double? number)
        {
            Put(name);
            if (number is { } known)
                _length += NumberText.Write(known, _buffer[_length..]);
            else
                Put("null"u8);
        }
    }
}
