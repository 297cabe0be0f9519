using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http.Json;

namespace FormApi.Features.TestStrips;

/// <summary>What strips taught about the stop.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="Line">The line: stop angle = offset + slope × fold angle.</param>
/// <param name="Margin">How far a single measured angle may be from the line [°].</param>
/// <param name="Settings">The stop to set for each wanted fold angle.</param>
/// <param name="Strips">The strips beside the line, in the order of the request.</param>
/// <param name="Outliers">Outliers; they are still counted.</param>
/// <param name="Paste">What to put into the next request, unchanged.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">The most useful next strip.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record StopStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: WrittenAs(typeof(StopStripsRequest))] RawJson Request,
    StopLineResult Line,
    MarginResult Margin,
    StopAdviceResult[] Settings,
    StopStripResult[] Strips,
    OutlierResult[] Outliers,
    StopPaste Paste,
    string Text,
    NextStripResult Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    BasisResult[] Basis);

/// <summary>The line of the stop.</summary>
/// <param name="Offset">Stop angle at a fold of zero [°].</param>
/// <param name="Slope">Growth of the stop angle with the fold angle.</param>
/// <param name="SlopeAssumed">Whether the slope was assumed, because all strips were folded at one stop.</param>
internal sealed record StopLineResult(IntervalResult Offset, IntervalResult Slope, bool SlopeAssumed);

/// <summary>The stop to set for a wanted fold angle.</summary>
/// <param name="Angle">The wanted fold angle [°].</param>
/// <param name="StopAngle">The stop angle for it [°].</param>
/// <param name="Set">The same on the stop's own steps [°].</param>
/// <param name="Expected">Angle that the next strip at that setting may have [°].</param>
internal sealed record StopAdviceResult(double Angle, IntervalResult StopAngle, double Set, IntervalResult Expected);

/// <summary>A strip beside the line.</summary>
/// <param name="Expected">Fold angle by the line [°].</param>
/// <param name="Miss">Measured less expected [°].</param>
/// <param name="Leverage">How far it pulls the line to itself, 0 to 1.</param>
internal sealed record StopStripResult(double Expected, double Miss, double Leverage);

/// <summary>What strips taught about springback.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="EffectiveYield">Yield stress with which pure bending agrees with the strips [MPa or psi].</param>
/// <param name="YieldOverModulus">The same over Young's modulus.</param>
/// <param name="NominalYield">The material's own yield stress [MPa or psi].</param>
/// <param name="Margin">How far a single finished radius may be from the expected one [%].</param>
/// <param name="Effects">What the learnt yield does to the form of each wanted radius.</param>
/// <param name="Strips">The strips beside the learnt yield, in the order of the request.</param>
/// <param name="Outliers">Outliers; they are still counted.</param>
/// <param name="Doubts">Why the value should not be used before something is cleared up; empty where nothing is in the way.</param>
/// <param name="Paste">What to put into the next request, unchanged; null while there are doubts.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">The most useful next strip.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record SpringbackStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: WrittenAs(typeof(SpringbackStripsRequest))] RawJson Request,
    IntervalResult EffectiveYield,
    IntervalResult YieldOverModulus,
    double NominalYield,
    MarginResult Margin,
    SpringbackEffectResult[] Effects,
    SpringbackStripResult[] Strips,
    OutlierResult[] Outliers,
    StripDoubtResult[] Doubts,
    SpringbackPaste? Paste,
    string Text,
    NextStripResult Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    BasisResult[] Basis);

/// <summary>What the learnt yield does to the form of a wanted radius.</summary>
/// <param name="FinishedRadius">The wanted finished inside radius [mm or in].</param>
/// <param name="FormRadiusBefore">Form radius by the material's own yield [mm or in].</param>
/// <param name="FormRadius">Form radius by the learnt yield [mm or in].</param>
/// <param name="Factor">Springback factor there, finished over formed curvature.</param>
internal sealed record SpringbackEffectResult(double FinishedRadius, double FormRadiusBefore, IntervalResult FormRadius, double Factor);

/// <summary>A strip beside the learnt yield.</summary>
/// <param name="Factor">Measured springback factor, finished over formed curvature of the mid surface.</param>
/// <param name="EffectiveYield">Yield stress with which this strip alone agrees [MPa or psi].</param>
/// <param name="Expected">Finished inside radius by the learnt yield [mm or in].</param>
/// <param name="Nominal">Finished inside radius by the material's own yield [mm or in]; null where the strip would have sprung flat.</param>
/// <param name="Miss">Measured over expected finished radius of the mid surface, less one [%].</param>
internal sealed record SpringbackStripResult(double Factor, double EffectiveYield, double Expected, double? Nominal, double Miss);

/// <summary>What strips taught about the neutral line of folds.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="NeutralFactor">Neutral factor K.</param>
/// <param name="Published">K by the published formula, the mean over the strips; null where it does not reach.</param>
/// <param name="Margin">How far a single strip may be from K, in units of its reading error.</param>
/// <param name="Strips">The strips, in the order of the request.</param>
/// <param name="Outliers">Outliers; they are still counted.</param>
/// <param name="Doubts">Why the value should not be used before something is cleared up; empty where nothing is in the way.</param>
/// <param name="Paste">What to put into the next request, unchanged; null while there are doubts.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">The most useful next strip.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record NeutralFactorStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: WrittenAs(typeof(NeutralFactorStripsRequest))] RawJson Request,
    IntervalResult NeutralFactor,
    double? Published,
    MarginResult Margin,
    NeutralFactorStripResult[] Strips,
    OutlierResult[] Outliers,
    StripDoubtResult[] Doubts,
    NeutralFactorPaste? Paste,
    string Text,
    NextStripResult Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    BasisResult[] Basis);

/// <summary>What one strip alone shows of the neutral line.</summary>
/// <param name="BendAllowance">Length that the fold took of the flat [mm or in].</param>
/// <param name="NeutralFactor">Neutral factor K.</param>
/// <param name="ReadingError">How far K may be out by the reading errors, at 95 %.</param>
/// <param name="Published">K by the published formula for its radius and thickness; null where it does not reach.</param>
internal sealed record NeutralFactorStripResult(double BendAllowance, double NeutralFactor, double ReadingError, double? Published);

/// <summary>What strips taught about the ripple that may show.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="Bracket">Between which ripples the limit lies.</param>
/// <param name="AllowedRipple">The careful end of it: the largest ripple judged smooth below every one judged to show [mm or in]; null where there is none.</param>
/// <param name="SlopeThere">Slope of the strip that set it [°]; null where none did.</param>
/// <param name="Strips">The strips, in the order of the request.</param>
/// <param name="Contradictions">Verdicts that go against each other, pair by pair.</param>
/// <param name="Paste">What to put into the next request, unchanged; null where no strip was smooth below one that shows.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">The most useful next strip.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record PrintThroughStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: WrittenAs(typeof(PrintThroughStripsRequest))] RawJson Request,
    BracketResult Bracket,
    double? AllowedRipple,
    double? SlopeThere,
    PrintThroughStripResult[] Strips,
    ContradictionResult[] Contradictions,
    PrintThroughPaste? Paste,
    string Text,
    NextStripResult Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    BasisResult[] Basis);

/// <summary>Between which ripples the limit lies.</summary>
/// <param name="LargestSmooth">Largest ripple judged smooth [mm or in]; null where no strip was smooth.</param>
/// <param name="SmallestShowing">Smallest ripple judged to show [mm or in]; null where none shows.</param>
internal sealed record BracketResult(double? LargestSmooth, double? SmallestShowing);

/// <summary>The ripple that a strip must have had; from a wrap model not yet checked against measured panels.</summary>
/// <param name="Usable">Whether the strip shows anything of the limit.</param>
/// <param name="Text">Why it does not, or null.</param>
/// <param name="Lever">Lever it was calculated with [mm or in].</param>
/// <param name="Ripple">Peak-to-valley height [mm or in]; null where the strip shows nothing.</param>
/// <param name="Slope">Slope against the smooth curve [°]; null where the strip shows nothing.</param>
internal sealed record PrintThroughStripResult(bool Usable, string? Text, double Lever, double? Ripple, double? Slope);

/// <summary>A strip judged smooth though another with no more ripple shows.</summary>
/// <param name="Smooth">JSON pointer of the smooth one in the request.</param>
/// <param name="Showing">JSON pointer of the one that shows.</param>
/// <param name="Text">Both ripples, and what to do.</param>
internal sealed record ContradictionResult(string Smooth, string Showing, string Text);

/// <summary>A value learnt from strips, and how far they leave it open.</summary>
/// <param name="Value">The best value.</param>
/// <param name="Low">Lower end; null where the strips set none.</param>
/// <param name="High">Upper end; null where the strips set none.</param>
/// <param name="Confidence">How often such an interval contains the true value.</param>
internal sealed record IntervalResult(double Value, double? Low, double? High, double Confidence);

/// <summary>How far a single reading may be from the fit, 19 times of 20.</summary>
/// <param name="Half">The half-width: scatter times Student's t, never below the reading error.</param>
/// <param name="Scatter">Standard deviation of the strips about the fit; null where no strip is left over.</param>
/// <param name="DegreesOfFreedom">Strips less fitted values.</param>
/// <param name="ByReadingError">Whether the half-width is the reading error and not the strips' scatter.</param>
/// <param name="Text">What the half-width rests on, in words.</param>
internal sealed record MarginResult(double Half, double? Scatter, int DegreesOfFreedom, bool ByReadingError, string Text);

/// <summary>A reason not to use what strips taught before it is cleared up.</summary>
/// <param name="Id">Stable id such as <c>yield-implausible</c>.</param>
/// <param name="Pointers">JSON pointers of the strips in question; empty where it is all of them.</param>
/// <param name="Text">What is doubtful, and what to look for.</param>
internal sealed record StripDoubtResult(string Id, string[] Pointers, string Text);

/// <summary>An outlier.</summary>
/// <param name="Pointer">JSON pointer of the strip in the request.</param>
/// <param name="Text">How far it is out, and what leaving it out would do.</param>
internal sealed record OutlierResult(string Pointer, string Text);

/// <summary>The most useful next strip; only the values that matter for it are given.</summary>
/// <param name="Text">What to bend, and why.</param>
/// <param name="StopAngle">Stop angle to set [°].</param>
/// <param name="Angle">Fold angle to aim at [°].</param>
/// <param name="Facet">Facet of the form [mm or in].</param>
/// <param name="Radius">Radius of the form's outside [mm or in].</param>
/// <param name="Thickness">Thickness of the strip [mm or in].</param>
/// <param name="Lever">Lever to pull at [mm or in].</param>
internal sealed record NextStripResult(
    string Text,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? StopAngle,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Angle,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Facet,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Radius,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Lever);

/// <summary>What the stop's strips put into the next request.</summary>
/// <param name="Form">The part of <c>form</c>.</param>
internal sealed record StopPaste(StopPastePart Form);

/// <summary>A part of <c>form</c>.</summary>
/// <param name="Stop">The line of the stop.</param>
internal sealed record StopPastePart(StopInput Stop);

/// <summary>What the springback's strips put into the next request.</summary>
/// <param name="Panel">The part of <c>panel</c>.</param>
internal sealed record SpringbackPaste(SpringbackPastePart Panel);

/// <summary>A part of <c>panel</c>.</summary>
/// <param name="Springback">How springback is found.</param>
internal sealed record SpringbackPastePart(EffectiveYieldPaste Springback);

/// <summary>Springback as measured.</summary>
/// <param name="EffectiveYield">The yield stress with which pure bending agrees [MPa or psi].</param>
internal sealed record EffectiveYieldPaste(double EffectiveYield);

/// <summary>What the folded strips put into the next request.</summary>
/// <param name="Form">The part of <c>form</c>.</param>
internal sealed record NeutralFactorPaste(NeutralFactorPastePart Form);

/// <summary>A part of <c>form</c>.</summary>
/// <param name="NeutralFactor">Neutral factor K of the folds.</param>
internal sealed record NeutralFactorPastePart(double NeutralFactor);

/// <summary>What the judged strips put into the next request.</summary>
/// <param name="Panel">The part of <c>panel</c>.</param>
internal sealed record PrintThroughPaste(PrintThroughPastePart Panel);

/// <summary>A part of <c>panel</c>.</summary>
/// <param name="AllowedRipple">Largest peak-to-valley height that may show [mm or in].</param>
internal sealed record PrintThroughPastePart(double AllowedRipple);
