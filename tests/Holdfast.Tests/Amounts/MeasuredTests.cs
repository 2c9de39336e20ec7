using Holdfast.Amounts;

namespace Holdfast.Tests.Amounts;

public class MeasuredTests
{
    private static readonly Source A = new("a", "first", 0.2);
    private static readonly Source B = new("b", "second", 0.3);

    [Fact]
    public void Difference_OfANumberWithItself_IsExactlyZero()
    {
        var x = Measured.From(5, A);
        Assert.Equal(0, (x - x).Value);
        Assert.Equal(0, (x - x).U);
    }

    // First-order law of propagation for a product of independent inputs (JCGM 100, 5.1.2): u² = (y·ux)² + (x·uy)².
    [Fact]
    public void Product_OfIndependentNumbers_FollowsTheLawOfPropagation()
    {
        var product = Measured.From(5, A) * Measured.From(7, B);
        Assert.Equal(35, product.Value);
        Assert.Equal(Math.Sqrt(Math.Pow(7 * 0.2, 2) + Math.Pow(5 * 0.3, 2)), product.U, 12);
    }

    [Fact]
    public void Correlation_OfResultsThatShareASource_IsExact()
    {
        var shared = Measured.From(1, A);
        var x = shared + Measured.From(1, B);
        Assert.Equal(0.2 * 0.2, Measured.Covariance(shared, x), 15);
        Assert.Equal(0.2 / Math.Sqrt(0.13), Measured.Correlation(shared, x), 12);
    }
}
