#pragma warning disable
namespace Forming.Curves.Points { public sealed record PointsFit(IReadOnlyList<CurvaturePiece> Pieces, double LargestMissMm, bool TurnsRight){ public static PointsFit Solve(IReadOnlyList<Point> p,double t)=>throw new NotImplementedException(); } public readonly record struct CurvaturePiece(double LengthMm,double StartCurvature,double EndCurvature); }
