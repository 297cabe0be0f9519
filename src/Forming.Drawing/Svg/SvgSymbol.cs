using System.Text;
using Forming.Drawing.Blocks;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Svg;

/// <summary>An address as a symbol that a camera reads, alone.</summary>
public static class SvgSymbol
{
    private const double Enlarged = 6;

    /// <summary>Draws an address.</summary>
    /// <param name="address">The address.</param>
    /// <returns>The picture.</returns>
    public static byte[] Of(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        // The picture's own margin is then small beside it.
        var tiles = (Tiles)LinkBlock.SymbolOf(address).Scaled(Enlarged);
        var (from, to) = tiles.Whole;
        var side = to.X - from.X;
        var text = new SvgText();
        text.Open(side, side, "Link", "Opens this job on the device that reads it.", style: null);
        text.Add([tiles]);
        text.Close();
        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
