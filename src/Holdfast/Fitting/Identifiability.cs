using Holdfast.Fitting.Solving;
namespace Holdfast.Fitting;

/// <summary>Whether the parameters can be told apart at the solution, and if not which combination of them is all that is determined.</summary>
/// <param name="Condition">Condition number of the slopes with their columns scaled to unit length.</param>
/// <param name="Determined">The combination in words, for example "qm × K"; null when each parameter is determined.</param>
public sealed record Identifiability(double Condition, string? Determined)
{
    /// <summary>Above this nothing separates the parameters.</summary>
    public const double NotIdentifiable = 1e8;

    /// <summary>Above this the reader is warned.</summary>
    public const double Weak = 1e4;

    private const double Negligible = 0.05;

    /// <summary>Reads the condition and the weakest direction from orthogonal factors at the solution.</summary>
    internal static Identifiability Of(Workspace memory, int free, Coordinates coordinates, IReadOnlyList<Parameter> parameters)
    {
        if (free == 0)
            return new(1, null);
        var lengths = new double[free];
        var singular = Singular.OfScaledTriangle(memory.Factor, memory.Rows, free, lengths);
        var condition = lengths.Contains(0.0) ? double.PositiveInfinity : singular.Condition;
        if (!(condition > Weak))
            return new(condition, null);

        // Along the weakest direction the curve does not change: d ln b for a logarithm, db otherwise.
        var moves = new double[free];
        for (var k = 0; k < free; k++)
            moves[k] = lengths[k] > 0 ? singular.Vectors[k, free - 1] / lengths[k] : singular.Vectors[k, free - 1] == 0 ? 0 : double.PositiveInfinity;
        var largest = moves.Max(Math.Abs);
        var involved = Enumerable.Range(0, free).Where(k => !(Math.Abs(moves[k]) < Negligible * largest) && moves[k] != 0).ToArray();
        var symbols = involved.Select(k => parameters[memory.Free[k]].Symbol).ToArray();
        if (involved.Length == 2 && involved.All(k => coordinates.IsLogarithmic(memory.Free[k])))
            return new(condition, Product(symbols, -moves[involved[0]] / moves[involved[1]]));
        return new(condition, involved.Length == 1 ? $"nothing of {symbols[0]}" : "a combination of " + string.Join(", ", symbols));
    }

    // b1 and b2 move as d ln b1 = −power · d ln b2, so b1 · b2^power stays.
    private static string Product(string[] symbols, double power)
    {
        if (Math.Abs(power - 1) < 0.02)
            return $"{symbols[0]} × {symbols[1]}";
        if (Math.Abs(power + 1) < 0.02)
            return $"{symbols[0]} / {symbols[1]}";
        return FormattableString.Invariant($"{symbols[0]} × {symbols[1]}^{power:0.##}");
    }
}
