namespace Forming.Springback;

/// <summary>How springback is found.</summary>
public abstract record SpringbackChoice;
