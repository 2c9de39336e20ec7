using Holdfast.Fitting;
using Holdfast.Fitting.Solving;
using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>The loops of both solvers allocate nothing: thousands of refits leave no work for the collector.</summary>
public class AllocationTests
{
    [Theory, InlineData("langmuir"), InlineData("sips"), InlineData("pfo"), InlineData("toth")]
    public void Refit_OfASmallCurve_AllocatesNothing(string curve)
    {
        var fit = RegressionData.Curves[curve].Fit(RegressionData.Points(curve), new() { Profiles = false });
        double[] y = [.. fit.Points.Y], w = [.. fit.Weights], theta = new double[fit.P], downhill = new double[fit.P], spread = new double[fit.P];
        var bytes = Allocated(() =>
        {
            for (var j = 0; j < fit.P; j++)
                theta[j] = fit.Theta[j] + 0.3;
            Assert.True(fit.Problem!.Refit(y, w, theta, 0, Damping.Cold, downhill, spread).Settled);
        });
        Assert.Equal(0, bytes);
        Agree.Relative(1e-8, fit.Theta[0], theta[0]);
    }

    [Fact]
    public void ThoroughFit_WithItsMemory_AllocatesNothing()
    {
        var fit = Fit.Of<Sips>(RegressionData.Points("sips"), new() { Profiles = false });
        double[] y = [.. fit.Points.Y], w = [.. fit.Weights], theta = new double[3];
        var memory = new Workspace(y.Length, 3);
        var converged = 0;
        var bytes = Allocated(() =>
        {
            for (var j = 0; j < 3; j++)
                theta[j] = fit.Theta[j] - 0.2;
            converged += fit.Problem!.Fit(y, w, theta, 0, 100, memory).Stop == StopReason.Converged ? 1 : 0;
        });
        Assert.Equal(0, bytes);
        Assert.Equal(250, converged);
    }

    [Fact]
    public void Refit_OfBatchVessels_AllocatesNothing()
    {
        var vessels = new BatchPoints([10, 20, 40, 80, 120], [0.5, 0.5, 0.5, 0.5, 0.5], [0.5, 1.4, 5, 30, 66]);
        var fit = Fit.Batch<Langmuir>(vessels, new() { Profiles = false });
        Assert.True(fit.IsFit);
        double[] y = [.. fit.Points.Y], w = [.. fit.Weights], theta = new double[2], downhill = new double[2];
        var bytes = Allocated(() =>
        {
            fit.Theta.CopyTo(theta, 0);
            theta[0] += 0.1;
            fit.Problem!.Refit(y, w, theta, 0, Damping.Cold, downhill, []);
        });
        Assert.Equal(0, bytes);
    }

    // The first calls compile and may allocate; what counts is the loop after them.
    private static long Allocated(Action fit)
    {
        for (var i = 0; i < 50; i++)
            fit();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 200; i++)
            fit();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
