using System.Globalization;
using System.Runtime.Intrinsics;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;

namespace Holdfast.Tests.Isotherms;

/// <summary>A curve read by name, as the reference tables name it, with its value and its exact slopes.</summary>
internal sealed record CurveCase(ModelCard Card, Func<double, double[], double> Value, Func<double, double[], Vector256<double>> Slopes)
{
    private static readonly Dictionary<string, CurveCase> ByName = new(StringComparer.Ordinal)
    {
        ["henry"] = Of<Henry>(),
        ["langmuir"] = Of<Langmuir>(),
        ["freundlich"] = Of<Freundlich>(),
        ["temkin"] = Of<Temkin>(),
        ["dubinin_radushkevich"] = Of<DubininRadushkevich>(),
        ["sips"] = Of<Sips>(),
        ["redlich_peterson"] = Of<RedlichPeterson>(),
        ["toth"] = Of<Toth>(),
        ["khan"] = Of<Khan>(),
        ["dual_langmuir"] = Of<DualSiteLangmuir>(),
        ["langmuir_partition"] = Of<LangmuirPartition>(),
        ["bet_liquid"] = Of<LiquidBet>(),
        ["pseudo_first"] = Of<PseudoFirstOrder>(),
        ["pseudo_second"] = Of<PseudoSecondOrder>(),
        ["general_order"] = Of<GeneralOrder>(),
        ["mixed_order"] = Of<MixedOrder>(),
        ["elovich"] = Of<Elovich>(),
        ["avrami"] = Of<Avrami>(),
        ["double_exponential"] = Of<DoubleExponential>(),
        ["weber_morris"] = Of<WeberMorris>(),
        ["sphere_diffusion"] = Of<SphereDiffusion>(),
    };

    /// <summary>The curve of that name.</summary>
    public static CurveCase Named(string name) => ByName[name];

    /// <summary>Parameters written "qm=50 K=0.12", in the order written.</summary>
    public static double[] Parameters(string text)
        => [.. text.Split(' ').Select(p => double.Parse(p[(p.IndexOf('=', StringComparison.Ordinal) + 1)..], CultureInfo.InvariantCulture))];

    private static CurveCase Of<TCurve>() where TCurve : struct, ICurve<TCurve>
        => new(
            TCurve.Card,
            (x, p) => TCurve.Value<Number>(x, [.. p.Select(v => new Number(v))]).Value,
            (x, p) => TCurve.Value<Slopes>(x, [.. p.Select(Holdfast.Amounts.Slopes.Parameter)]).Partials);
}
