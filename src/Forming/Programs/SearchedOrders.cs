namespace Forming.Programs;

/// <summary>Which orders a search looks among.</summary>
public enum SearchedOrders
{
    /// <summary>Those whose made folds are always the outer ones of both edges, or one run of neighbours.</summary>
    Families,

    /// <summary>Every order there is.</summary>
    AllOrders,
}
