using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Forming.Results;

namespace Forming.Drawing.Csv;

/// <summary>Comma-separated values (RFC 4180), UTF-8 without a byte order mark.</summary>
public static class CsvText
{
    /// <summary>Writes a file.</summary>
    /// <param name="stream">Where to write; stays open.</param>
    /// <param name="headings">The headings, units among them.</param>
    /// <param name="rows">The rows.</param>
    public static void Write(Stream stream, IEnumerable<string> headings, IEnumerable<IEnumerable<string>> rows)
    {
        using var text = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
        using var csv = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n" });
        Row(headings);
        foreach (var row in rows)
            Row(row);

        void Row(IEnumerable<string> cells)
        {
            foreach (var cell in cells)
                csv.WriteField(cell);
            csv.NextRecord();
        }
    }

    /// <summary>A number with nine decimals, as an answer gives it.</summary>
    /// <param name="value">The number.</param>
    public static string Number(double value) => (Math.Round(Finite.Of(value), 9) + 0.0).ToString("0.#########", CultureInfo.InvariantCulture);
}
