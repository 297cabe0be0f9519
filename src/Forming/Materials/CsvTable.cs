using System.Text;

namespace Forming.Materials;

/// <summary>A table in RFC 4180 form: comment lines that start with <c>#</c>, one header line, then the rows.</summary>
internal sealed class CsvTable
{
    private CsvTable(string head, IReadOnlyList<string> header, IReadOnlyList<CsvRow> rows)
    {
        Head = head;
        Header = header;
        Rows = rows;
    }

    /// <summary>The comment above the header as one text; empty where there is none.</summary>
    public string Head { get; }

    /// <summary>Column names, in order.</summary>
    public IReadOnlyList<string> Header { get; }

    /// <summary>The rows, in order.</summary>
    public IReadOnlyList<CsvRow> Rows { get; }

    /// <summary>Reads a table of this assembly.</summary>
    /// <param name="fileName">File name in the folder's <c>Tables</c>.</param>
    /// <param name="folder">Folder of the idea it belongs to.</param>
    public static CsvTable ReadEmbedded(string fileName, string folder = "Materials")
    {
        using var stream = typeof(CsvTable).Assembly.GetManifestResourceStream($"Forming.{folder}.Tables.{fileName}")
            ?? throw new FileNotFoundException("No such table is embedded.", fileName);
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return Read(reader, fileName);
    }

    /// <summary>Reads a table.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="name">Name of the table, for messages.</param>
    /// <exception cref="FormatException">No header, a column named twice, a row of another width, or a quote left open.</exception>
    public static CsvTable Read(TextReader reader, string name)
    {
        var head = new List<string>();
        while (reader.Peek() == '#') head.Add(reader.ReadLine()!.TrimStart('#').Trim());
        var records = Records(reader.ReadToEnd(), name);
        if (records.Count == 0) throw new FormatException($"{name}: no header line.");

        var header = records[0];
        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < header.Count; i++)
        {
            if (!columns.TryAdd(header[i], i)) throw new FormatException($"{name}: column {header[i]} is named twice.");
        }

        var rows = new List<CsvRow>(records.Count - 1);
        foreach (var fields in records.Skip(1))
        {
            var place = $"{name}, row {rows.Count + 1}";
            if (fields.Count != header.Count) throw new FormatException($"{place}: {fields.Count} fields under {header.Count} columns.");
            rows.Add(new CsvRow(place, columns, fields));
        }

        return new CsvTable(string.Join(' ', head), header, rows);
    }

    private static List<List<string>> Records(string text, string name)
    {
        var records = new List<List<string>>();
        var position = 0;
        while (position < text.Length)
        {
            var fields = new List<string> { Field(text, ref position, name) };
            while (position < text.Length && text[position] == ',')
            {
                position++;
                fields.Add(Field(text, ref position, name));
            }

            if (position < text.Length && text[position] == '\r') position++;
            if (position < text.Length && text[position++] != '\n') throw new FormatException($"{name}: text after a closing quote.");
            records.Add(fields);
        }

        return records;
    }

    private static string Field(string text, ref int position, string name)
    {
        if (position < text.Length && text[position] == '"') return Quoted(text, ref position, name);
        var start = position;
        while (position < text.Length && text[position] is not (',' or '\r' or '\n')) position++;
        return text[start..position];
    }

    private static string Quoted(string text, ref int position, string name)
    {
        var field = new StringBuilder();
        for (position++; position < text.Length; position++)
        {
            if (text[position] == '"')
            {
                position++;
                var isDoubled = position < text.Length && text[position] == '"';
                if (!isDoubled) return field.ToString();
            }

            field.Append(text[position]);
        }

        throw new FormatException($"{name}: a quote is left open.");
    }
}
