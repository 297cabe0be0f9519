using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Blanks;
using Forming.Jobs;
using Forming.Layout;

namespace FormApi.Features.Forms;

/// <summary>A flat blank.</summary>
/// <param name="Length">Square to the folds [mm or in].</param>
/// <param name="Width">Along the folds [mm or in].</param>
/// <param name="LengthText">The length as it reads on the tape.</param>
/// <param name="WidthText">The width as it reads on the tape.</param>
/// <param name="Area">Area [mm² or in²].</param>
/// <param name="Mass">Mass [kg or lb].</param>
/// <param name="Outline">Corners [x, y], first = last, x from the lead-in edge, y along the folds [mm or in].</param>
/// <param name="Stock">What each stock sheet gives, in both directions.</param>
internal sealed record BlankResult(
    double Length,
    double Width,
    [property: InFull] string LengthText,
    [property: InFull] string WidthText,
    [property: InFull] double Area,
    double Mass,
    [property: InFull, JsonConverter(typeof(PairsConverter))] Pair[] Outline,
    [property: InFull] StockResult[] Stock)
{
    /// <summary>The blank in the caller's units.</summary>
    /// <param name="blank">The blank.</param>
    /// <param name="tape">The tape it is laid out by.</param>
    /// <param name="units">The caller's units.</param>
    public static BlankResult From(Blank blank, Tape tape, UnitSystem units) => new(
        units.Length(blank.LengthMm),
        units.Length(blank.WidthMm),
        TapeReading.Of(blank.LengthMm, tape).Text,
        TapeReading.Of(blank.WidthMm, tape).Text,
        units.Area(blank.AreaMm2),
        units.Mass(blank.MassKg),
        units.Points(blank.Outline),
        Lists.Map(blank.Stock, stock => new StockResult(
            stock.Sheet.Name, stock.FoldsAlongGrain ? Grain.Along : Grain.Across, stock.Pieces, WireNumber.Of(stock.Use))));
}

/// <summary>The flats before the first fold and after the last, as they read on the tape.</summary>
/// <param name="InText">Lead-in.</param>
/// <param name="OutText">Lead-out.</param>
internal sealed record LeadsResult(string InText, string OutText)
{
    /// <summary>The leads on a tape.</summary>
    /// <param name="inMm">Lead-in [mm].</param>
    /// <param name="outMm">Lead-out [mm].</param>
    /// <param name="tape">The tape.</param>
    public static LeadsResult From(double inMm, double outMm, Tape tape) =>
        new(TapeReading.Of(inMm, tape).Text, TapeReading.Of(outMm, tape).Text);
}

/// <summary>How many blanks one stock sheet gives.</summary>
/// <param name="Sheet">Name of the sheet.</param>
/// <param name="Grain">How the folds then lie to the rolling direction.</param>
/// <param name="Pieces">Whole blanks, side by side in one direction.</param>
/// <param name="Use">Share of the sheet used, 0 to 1.</param>
internal sealed record StockResult(
    string Sheet,
    [property: JsonConverter(typeof(WordConverter<Grain>))] Grain Grain,
    int Pieces,
    double Use);
