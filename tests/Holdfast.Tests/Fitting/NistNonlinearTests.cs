using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>NIST StRD nonlinear regression: certified parameters, standard deviations and residual sum of squares (reference/nist-strd/SOURCE.md).</summary>
public class NistNonlinearTests
{
    public static TheoryData<string, string> Runs()
    {
        var runs = new TheoryData<string, string>();
        foreach (var name in NistSet.Names("nonlinear"))
        {
            runs.Add(name, "start1");
            runs.Add(name, "start2");
        }

        return runs;
    }

    [Theory, MemberData(nameof(Runs))]
    public void Fit_FromEachStart_AgreesWithTheCertificate(string name, string start)
    {
        var set = NistSet.Read("nonlinear", name);
        var fit = NistCurves.Fit(set, set.Numbers(start));
        Assert.True(fit.IsFit, $"{name} from {start}: {fit.Stop}; {string.Join(' ', fit.Findings.Select(f => f.Sentence))}");
        for (var j = 0; j < fit.P; j++)
            Agree.Digits(6, set.Certified[j], fit.Parameters[j].Value, $"{name} {start} {fit.Parameters[j].Symbol}");

        // Lanczos1 has a residual sum of squares of 1.4e-25, below the rounding of doubles; its standard deviations rest on that.
        if (name == "Lanczos1")
            return;
        for (var j = 0; j < fit.P; j++)
            Agree.Digits(6, set.StandardDeviations[j], fit.Parameters[j].StandardError!.Value, $"{name} {start} sd of {fit.Parameters[j].Symbol}");
        Agree.Digits(8, set.Number("residualSumOfSquares"), fit.SumOfSquares, $"{name} {start} residual sum of squares");
        Agree.Digits(8, set.Number("residualStandardDeviation"), fit.ResidualSd!.Value, $"{name} {start} residual sd");
    }
}
