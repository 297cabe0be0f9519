namespace Forming.Programs.Brakes;

/// <summary>Which folds are made.</summary>
/// <param name="Bits">A bit a fold.</param>
internal readonly record struct FoldSet(UInt128 Bits)
{
    /// <summary>More folds than this are not told apart.</summary>
    public const int MostFolds = 128;

    public static FoldSet All(int folds) => new(folds == MostFolds ? UInt128.MaxValue : (UInt128.One << folds) - 1);

    public bool Has(int fold) => ((Bits >> fold) & 1) != 0;

    public FoldSet With(int fold) => new(Bits | (UInt128.One << fold));

    public FoldSet Without(int fold) => new(Bits & ~(UInt128.One << fold));

    public int Count => (int)UInt128.PopCount(Bits);
}
