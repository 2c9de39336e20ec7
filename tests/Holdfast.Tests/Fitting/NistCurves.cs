using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Tests.Fitting;

/// <summary>The models of the NIST StRD nonlinear sets, written as the certificates print them.</summary>
internal static class NistCurves
{
    /// <summary>Fits a set by its name.</summary>
    public static FitResult Fit(NistSet set, IReadOnlyList<double> start) => set.Name switch
    {
        "Chwirut1" or "Chwirut2" => Of<Chwirut>(set, start),
        "ENSO" => Of<Enso>(set, start),
        "Eckerle4" => Of<Eckerle>(set, start),
        "Gauss2" or "Gauss3" => Of<Gauss>(set, start),
        "Hahn1" or "Thurber" => Of<Rational>(set, start),
        "Lanczos1" or "Lanczos2" or "Lanczos3" => Of<Lanczos>(set, start),
        "MGH09" => Of<Mgh09>(set, start),
        "MGH10" => Of<Mgh10>(set, start),
        "MGH17" => Of<Mgh17>(set, start),
        "Misra1a" => Of<Misra1a>(set, start),
        "Misra1b" => Of<Misra1b>(set, start),
        "Misra1c" => Of<Misra1c>(set, start),
        "Misra1d" => Of<Misra1d>(set, start),
        "Nelson" => Holdfast.Fitting.Fit.Of(new Nelson(set.X[0], set.X[1]), Card(3), set.Points, Options(start)),
        "Rat42" => Of<Rat42>(set, start),
        "Rat43" => Of<Rat43>(set, start),
        _ => throw new ArgumentException($"No model is written for {set.Name}.", nameof(set)),
    };

    private static FitResult Of<TCurve>(NistSet set, IReadOnlyList<double> start) where TCurve : struct, ICurve<TCurve>
        => Holdfast.Fitting.Fit.Of(new CurvePrediction<TCurve>(set.X[0]), TCurve.Card, set.Points, Options(start));

    private static FitOptions Options(IReadOnlyList<double> start) => new() { Scan = false, Profiles = false, Starts = [start] };

    private static ModelCard Card(int parameters)
        => new("certified model", "", [.. Enumerable.Range(1, parameters).Select(i => new Parameter(FormattableString.Invariant($"b{i}"), Kind.Other, "", ""))], "NIST StRD", "");

    // Exact to first order for every number type: the value from the platform, the slope from the difference that has no value.
    private static T Cos<T>(T a) where T : struct, IReal<T> => Math.Cos(a.Value) - Math.Sin(a.Value) * (a - a.Value);

    private static T Sin<T>(T a) where T : struct, IReal<T> => Math.Sin(a.Value) + Math.Cos(a.Value) * (a - a.Value);

    private readonly struct Chwirut : ICurve<Chwirut>
    {
        public static ModelCard Card { get; } = NistCurves.Card(3);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => T.Exp(-p[0] * x) / (p[1] + p[2] * x);
    }

    private readonly struct Enso : ICurve<Enso>
    {
        public static ModelCard Card { get; } = NistCurves.Card(9);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        {
            var turn = 2 * Math.PI * x;
            return p[0] + p[1] * Cos(turn / 12) + p[2] * Sin(turn / 12) + p[4] * Cos(turn / p[3]) + p[5] * Sin(turn / p[3])
                + p[7] * Cos(turn / p[6]) + p[8] * Sin(turn / p[6]);
        }
    }

    private readonly struct Eckerle : ICurve<Eckerle>
    {
        public static ModelCard Card { get; } = NistCurves.Card(3);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        {
            var z = (x - p[2]) / p[1];
            return p[0] / p[1] * T.Exp(-0.5 * z * z);
        }
    }

    private readonly struct Gauss : ICurve<Gauss>
    {
        public static ModelCard Card { get; } = NistCurves.Card(8);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        {
            T first = (x - p[3]) / p[4], second = (x - p[6]) / p[7];
            return p[0] * T.Exp(-p[1] * x) + p[2] * T.Exp(-first * first) + p[5] * T.Exp(-second * second);
        }
    }

    private readonly struct Rational : ICurve<Rational>
    {
        public static ModelCard Card { get; } = NistCurves.Card(7);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
            => (p[0] + x * (p[1] + x * (p[2] + x * p[3]))) / (1 + x * (p[4] + x * (p[5] + x * p[6])));
    }

    private readonly struct Lanczos : ICurve<Lanczos>
    {
        public static ModelCard Card { get; } = NistCurves.Card(6);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
            => p[0] * T.Exp(-p[1] * x) + p[2] * T.Exp(-p[3] * x) + p[4] * T.Exp(-p[5] * x);
    }

    private readonly struct Mgh09 : ICurve<Mgh09>
    {
        public static ModelCard Card { get; } = NistCurves.Card(4);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * (x * x + x * p[1]) / (x * x + x * p[2] + p[3]);
    }

    private readonly struct Mgh10 : ICurve<Mgh10>
    {
        public static ModelCard Card { get; } = NistCurves.Card(3);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * T.Exp(p[1] / (x + p[2]));
    }

    private readonly struct Mgh17 : ICurve<Mgh17>
    {
        public static ModelCard Card { get; } = NistCurves.Card(5);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] + p[1] * T.Exp(-x * p[3]) + p[2] * T.Exp(-x * p[4]);
    }

    private readonly struct Misra1a : ICurve<Misra1a>
    {
        public static ModelCard Card { get; } = NistCurves.Card(2);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * (1 - T.Exp(-p[1] * x));
    }

    private readonly struct Misra1b : ICurve<Misra1b>
    {
        public static ModelCard Card { get; } = NistCurves.Card(2);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        {
            var u = 1 + p[1] * x / 2;
            return p[0] * (1 - 1 / (u * u));
        }
    }

    private readonly struct Misra1c : ICurve<Misra1c>
    {
        public static ModelCard Card { get; } = NistCurves.Card(2);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * (1 - 1 / T.Sqrt(1 + 2 * p[1] * x));
    }

    private readonly struct Misra1d : ICurve<Misra1d>
    {
        public static ModelCard Card { get; } = NistCurves.Card(2);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * p[1] * x / (1 + p[1] * x);
    }

    private readonly struct Nelson(double[] time, double[] temperature) : IPrediction
    {
        public int Count => time.Length;

        public T At<T>(int i, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] - p[1] * time[i] * T.Exp(-p[2] * temperature[i]);
    }

    private readonly struct Rat42 : ICurve<Rat42>
    {
        public static ModelCard Card { get; } = NistCurves.Card(3);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] / (1 + T.Exp(p[1] - p[2] * x));
    }

    private readonly struct Rat43 : ICurve<Rat43>
    {
        public static ModelCard Card { get; } = NistCurves.Card(4);

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] / T.Pow(1 + T.Exp(p[1] - p[2] * x), 1 / p[3]);
    }
}
