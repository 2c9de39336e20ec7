namespace Holdfast.Claims;

/// <summary>Claims that say the same of several series or runs, said once.</summary>
public static class Together
{
    private const string Place = "{place}";

    /// <summary>One sentence where the claims differ in one parameter alone, "Controls of DOSE, KIN-05 and PH stayed …"; else each in its own words.</summary>
    /// <param name="verdicts">Judged claims.</param>
    public static string Sentence(IReadOnlyList<Verdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        foreach (var name in verdicts.Count < 2 ? [] : new[] { "series", "run" })
        {
            var places = verdicts.Select(v => v.Claim.Words(name)).OfType<string>().ToArray();
            if (places.Length == verdicts.Count
                && verdicts.Select((v, i) => v.Sentence.Replace(places[i], Place, StringComparison.Ordinal)).Distinct(StringComparer.Ordinal).ToArray() is [var alike])
            {
                return alike.Replace(Place, Phrase.Listed(places), StringComparison.Ordinal);
            }
        }

        return string.Join(" ", verdicts.Select(v => v.Sentence));
    }
}
