namespace Forming.Estimates;

/// <summary>One panel of the batch, likely figures.</summary>
/// <param name="Piece">Which panel, from 1.</param>
/// <param name="Minutes">Its own labour [min].</param>
/// <param name="Cost">Its own labour and sheet, without the form [money].</param>
/// <param name="TotalMinutes">Form and panels up to and with this one [min].</param>
/// <param name="TotalCost">Form and panels up to and with this one [money].</param>
/// <param name="AverageCost">The same for each panel [money].</param>
public sealed record PieceFigure(int Piece, double Minutes, double Cost, double TotalMinutes, double TotalCost, double AverageCost);
