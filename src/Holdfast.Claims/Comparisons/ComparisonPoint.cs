namespace Holdfast.Claims.Comparisons;

/// <summary>Where uptakes are compared: at a concentration left, or in vessels of one start concentration and dose.</summary>
/// <param name="Left">Concentration left, mg/L; null where start and dose are given.</param>
/// <param name="Start">Start concentration, mg/L.</param>
/// <param name="Dose">Dose, g/L.</param>
public sealed record ComparisonPoint(double? Left, double? Start, double? Dose)
{
    /// <summary>In words: "5 mg/L left", "50 mg/L and 2 g/L at the start".</summary>
    public string Words => Left is { } left ? $"{Phrase.With(left, "mg/L")} left" : $"{Phrase.With(Start!.Value, "mg/L")} and {Phrase.With(Dose!.Value, "g/L")} at the start";
}
