using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Intake;

/// <summary>
/// Files as people really have them. The cases were written by others than the reader's authors, each from a stated truth; reference/intake-cases/SOURCE.md
/// says how, and what the reader made of each set at first sight.
/// </summary>
public class IntakeCaseTests
{
    [Fact]
    public void OurCases_TakenInWithoutAnswers_AreRightOrAsked()
        => AreRightOrAsked([.. Directory.EnumerateDirectories(Repository.Path("reference", "intake-cases")).SelectMany(IntakeCase.In)], NotYet);

    [Fact]
    public void SharedCases_TakenInWithoutAnswers_AreRightOrAsked()
        => AreRightOrAsked([.. IntakeCase.In(Repository.Verbatim("intake"))], []);

    // Electrodes whose millivolts follow the logarithm of the concentration (c12 of the twenty-fourth, c07 of the twenty-fifth set), a metal read by what it takes from a dye's light (c09 of the
    // twenty-sixth), two lines of a spectrum of which a note forbids one (c23 of the twenty-seventh),
    // and the time of a flask without a result, which is left out as its remark says (c01 of the twenty-ninth).
    private static readonly string[] NotYet = ["c01", "c07", "c09", "c12", "c23"];

    private static void AreRightOrAsked(IReadOnlyCollection<IntakeCase> cases, string[] notYet)
    {
        Assert.NotEmpty(cases);
        var outcomes = cases.Select(c => c.Run()).ToList();
        // Never a number that is silently wrong, whatever else is missing.
        Assert.DoesNotContain(outcomes, o => o.Wrong.Length > 0);
        // A person reads words, not the names that the terminal uses.
        Assert.Equal([], outcomes.SelectMany(o => o.Unworded).Distinct());
        var unmet = outcomes.Where(o => !o.Meets).ToList();
        Assert.True(unmet.Select(o => o.Name).Order(StringComparer.Ordinal).SequenceEqual(notYet), string.Join('\n', unmet));
    }
}
