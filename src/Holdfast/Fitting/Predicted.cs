namespace Holdfast.Fitting;

/// <summary>A number that a fitted curve predicts, with its interval.</summary>
/// <param name="Value">The prediction, in its unit.</param>
/// <param name="StandardError">Its standard error, same unit.</param>
/// <param name="Lower">Lower limit, same unit.</param>
/// <param name="Upper">Upper limit, same unit.</param>
public sealed record Predicted(double Value, double StandardError, double Lower, double Upper);

/// <summary>What a vessel of a given start concentration and dose comes to by a fitted isotherm.</summary>
/// <param name="Left">Concentration left, in the unit of the start concentration.</param>
/// <param name="Uptake">Uptake q, in the unit of the isotherm.</param>
/// <param name="Removal">Removal, %.</param>
public sealed record VesselPrediction(Predicted Left, Predicted Uptake, Predicted Removal);

/// <summary>For whom a prediction is made.</summary>
public enum PredictionOf
{
    /// <summary>The mean of many vessels: where the curve lies.</summary>
    Mean,

    /// <summary>One new vessel: the scatter from vessel to vessel comes on top.</summary>
    OneVessel,
}
