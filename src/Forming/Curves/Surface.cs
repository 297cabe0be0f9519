namespace Forming.Curves;

/// <summary>On which face of the panel a curve was measured.</summary>
public enum Surface
{
    /// <summary>The concave face, which lies on the form.</summary>
    Inside,

    /// <summary>Half-way through the thickness.</summary>
    Mid,

    /// <summary>The convex face.</summary>
    Outside,
}
