using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class DistributionTests
{
    // ½ erfc(9/√2) = 1.12858840595384e-19 (any table of erfc; from memory), where 1 − Φ(9) computed plainly is 0.
    [Fact]
    public void NormalAbove_FarOut_KeepsItsDigits() => Agree.Digits(12, 1.12858840595384e-19, NormalDistribution.Above(9));

    // Student's t with 1 degree of freedom is the Cauchy distribution: tail = atan(1/t)/π, quantile = tan(π(p − ½)).
    [Theory, InlineData(0.1), InlineData(1.0), InlineData(40.0), InlineData(1e6)]
    public void Student_OneDegree_IsCauchy(double t)
    {
        Agree.Digits(12, Math.Atan2(1, t) / Math.PI, StudentDistribution.Above(t, 1));
        Agree.Digits(12, t, -StudentDistribution.Quantile(Math.Atan2(1, t) / Math.PI, 1));
    }

    // Large degrees of freedom are where a density written with powers overflows; the quantile must still invert the tail.
    [Theory, InlineData(1e-12), InlineData(0.05), InlineData(0.3), InlineData(0.975)]
    public void Quantiles_LargeAndBrokenDegrees_InvertTheTail(double p)
    {
        foreach (var dof in new[] { 0.7, 3.3, 156, 5000, 2e5 })
        {
            Agree.Digits(9, Math.Min(p, 1 - p), StudentDistribution.Above(Math.Abs(StudentDistribution.Quantile(p, dof)), dof), "t");
            Agree.Digits(9, 1 - p, FisherDistribution.Above(FisherDistribution.Quantile(p, 2, dof), 2, dof), "F above");
            Agree.Digits(9, 1 - p, FisherDistribution.Above(FisherDistribution.Quantile(p, dof, 5), dof, 5), "F below");
            Agree.Digits(9, 1 - p, ChiSquareDistribution.Above(ChiSquareDistribution.Quantile(p, dof), dof), "chi-square");
        }
    }

    // With 2 degrees of freedom t = (2p − 1)/√(2p(1 − p)).
    [Theory, InlineData(0.6), InlineData(0.95), InlineData(0.975), InlineData(0.9995), InlineData(0.01)]
    public void Student_TwoDegrees_HasAClosedForm(double p)
        => Agree.Digits(12, (2 * p - 1) / Math.Sqrt(2 * p * (1 - p)), StudentDistribution.Quantile(p, 2));

    // F(2, 2): P(F > f) = 1/(1 + f). F(1, ν) is t².
    [Theory, InlineData(0.01), InlineData(1.0), InlineData(250.0)]
    public void Fisher_SmallDegrees_HasAClosedForm(double f)
    {
        Agree.Digits(12, 1 / (1 + f), FisherDistribution.Above(f, 2, 2));
        Agree.Digits(12, StudentDistribution.Beyond(Math.Sqrt(f), 7.3), FisherDistribution.Above(f, 1, 7.3));
    }

    [Theory, InlineData(0.05, 3.0, 12.0), InlineData(0.99, 1.0, 3.0), InlineData(0.95, 2.5, 10.7)]
    public void Fisher_QuantilePutBack_GivesTheProbability(double p, double above, double below)
        => Agree.Digits(12, 1 - p, FisherDistribution.Above(FisherDistribution.Quantile(p, above, below), above, below));

    // Chi-square with 2 degrees of freedom: P(X > x) = e^(−x/2).
    [Theory, InlineData(0.2), InlineData(5.99), InlineData(60.0)]
    public void ChiSquare_TwoDegrees_IsExponential(double x)
    {
        Agree.Digits(12, Math.Exp(-x / 2), ChiSquareDistribution.Above(x, 2));
        Agree.Digits(10, 0.3, ChiSquareDistribution.Above(ChiSquareDistribution.Quantile(0.7, 4.4), 4.4));
    }

    // Noncentral t without noncentrality is Student's t; with infinite degrees of freedom a shifted normal.
    [Fact]
    public void NoncentralStudent_Limits_AreKnown()
    {
        Agree.Digits(11, StudentDistribution.Above(2.1, 5), NoncentralStudent.Above(2.1, 5, 0));
        Agree.Digits(11, StudentDistribution.Above(2.1, 1), NoncentralStudent.Above(2.1, 1, 0));
        Agree.Digits(14, NormalDistribution.Above(-0.9), NoncentralStudent.Above(2.1, double.PositiveInfinity, 3));
        Agree.Digits(12, 1, NoncentralStudent.Above(700, 4, 20) + NoncentralStudent.Below(700, 4, 20));
    }

    // T² of a noncentral t is a noncentral F with 1 and ν degrees of freedom and λ = δ².
    [Theory, InlineData(2.0, 4.0, 1.5), InlineData(3.5, 20.0, 3.0), InlineData(9.0, 3.0, 12.0)]
    public void NoncentralFisher_OneDegree_IsTheSquareOfNoncentralStudent(double t, double dof, double delta)
        => Agree.Digits(10,
            NoncentralStudent.Above(t, dof, delta) + NoncentralStudent.Below(-t, dof, delta),
            NoncentralFisher.Above(t * t, 1, dof, delta * delta));

    // Noncentral chi-square with 1 degree of freedom is the square of a shifted normal value.
    [Theory, InlineData(3.84, 2.8), InlineData(30.0, 5.5)]
    public void NoncentralChiSquare_OneDegree_IsASquaredNormal(double x, double delta)
        => Agree.Digits(11,
            NormalDistribution.Above(Math.Sqrt(x) - delta) + NormalDistribution.Below(-Math.Sqrt(x) - delta),
            NoncentralChiSquare.Above(x, 1, delta * delta));

    // The studentised range of two means is √2 |t|.
    [Theory, InlineData(0.5, 3.0), InlineData(3.1, 6.0), InlineData(30.0, 6.0), InlineData(4.0, 200.0)]
    public void StudentizedRange_TwoMeans_IsStudent(double q, double dof)
        => Agree.Digits(10, StudentDistribution.Beyond(q / Math.Sqrt(2), dof), StudentizedRange.Above(q, 2, dof));

    // Upper 5 % and 1 % points as printed in tables after E. S. Pearson and H. O. Hartley, Biometrika Tables for Statisticians 1 (from memory).
    [Theory]
    [InlineData(0.95, 3, 10.0, 3.88), InlineData(0.95, 4, 20.0, 3.96), InlineData(0.95, 5, 10.0, 4.65), InlineData(0.99, 3, 10.0, 5.27)]
    [InlineData(0.95, 10, double.PositiveInfinity, 4.47), InlineData(0.95, 3, 2.0, 8.33)]
    public void StudentizedRange_PrintedPoints_AreReproduced(double p, int groups, double dof, double printed)
        => Assert.Equal(printed, StudentizedRange.Quantile(p, groups, dof), 0.0051);

    [Theory, InlineData(0.0), InlineData(1.0), InlineData(double.NaN)]
    public void Quantile_OutsideZeroToOne_Throws(double p)
        => Assert.Throws<ArgumentOutOfRangeException>(() => StudentDistribution.Quantile(p, 3));

    [Fact]
    public void Quantile_NoDegreesOfFreedom_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => StudentDistribution.Quantile(0.9, 0));
}
