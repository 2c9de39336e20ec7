using System.Text.Json;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.Tables;

namespace Holdfast.Cli;

/// <summary>
/// A number as every verb writes it in JSON; docs/output.schema.json says the same. Each member is always there, a true number or null, and where one of them
/// is null <paramref name="Why"/> says why.
/// </summary>
/// <param name="Value">The number, in the unit.</param>
/// <param name="U">Its standard uncertainty, in the unit.</param>
/// <param name="Low">Lower end of its interval.</param>
/// <param name="High">Upper end of its interval.</param>
/// <param name="Level">Confidence of the interval, 0 to 1.</param>
/// <param name="Unit">The unit, "" for none.</param>
/// <param name="How">Where value and interval come from.</param>
/// <param name="Why">Why a member is null, or null when none is.</param>
internal sealed record JsonNumber(double? Value, double? U, double? Low, double? High, double? Level, string Unit, string How, string? Why)
{
    private const double Usual = 0.95;

    /// <summary>Address of its trail, or null.</summary>
    public string? Trail { get; init; }

    /// <summary>A measured value: its interval follows from its own degrees of freedom.</summary>
    /// <param name="value">The value, in the unit given.</param>
    /// <param name="unit">Its unit.</param>
    public static JsonNumber Of(Measured value, string unit)
    {
        if (!(value.U > 0) || !double.IsFinite(value.U))
            return Alone(value.Value, unit, "worked out", "none of its inputs came with an uncertainty");
        var expanded = ExpandedUncertainty.Of(value, Usual);
        return new(value.Value, value.U, value.Value - expanded.U, value.Value + expanded.U, Usual, unit, FormattableString.Invariant($"uncertainty propagated to first order, k = {expanded.K:0.##}"), null);
    }

    /// <summary>A number that came without an interval.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="how">Where it comes from.</param>
    /// <param name="why">Why it has no uncertainty.</param>
    public static JsonNumber Alone(double? value, string unit, string how, string why) => new(Finite(value), null, null, null, null, unit, how, value is null || Finite(value) is not null ? why : "it is not defined");

    /// <summary>A number that decided a claim.</summary>
    /// <param name="number">The number.</param>
    public static JsonNumber Of(Deciding number)
    {
        var (low, high, u) = (Finite(number.Low), Finite(number.High), number.U);
        var why = Finite(number.Value) is null ? "the number is not defined by these data"
            : number is { Low: null, High: null } ? "no interval belongs to it"
            : low is null || high is null ? "the data set no limit on an open side"
            : u is null || number.Level is null ? "the note says what the interval is"
            : null;
        return new(Finite(number.Value), u, low, high, number.Level, number.Unit, number.Note ?? "see the method of the verdict", why);
    }

    /// <summary>A fitted parameter.</summary>
    /// <param name="parameter">The parameter.</param>
    /// <param name="fit">The fit it belongs to.</param>
    public static JsonNumber Of(FittedParameter parameter, FitResult fit)
    {
        var (low, high, u) = (Finite(parameter.Profile?.Lower.Value), Finite(parameter.Profile?.Upper.Value), Finite(parameter.StandardError));
        var determined = parameter.StandardError is null || u is not null;
        var why = !determined || Finite(parameter.Value) is null ? "these data do not determine it"
            : parameter.Profile is null ? "no interval was worked out: nothing is left over to judge by, or the parameter ended on a bound"
            : low is null || high is null ? "the data set no limit on an open side"
            : u is null ? "it ended on a bound, or nothing is left over to judge by"
            : null;
        return new(determined ? Finite(parameter.Value) : null, u, low, high, parameter.Profile is null ? null : fit.Confidence, parameter.Unit, "least squares; interval by profile likelihood", why);
    }

    /// <summary>What a fitted curve predicts.</summary>
    /// <param name="prediction">The prediction.</param>
    public static JsonNumber Of(Prediction prediction)
    {
        var value = prediction.Value;
        return new(
            Finite(value?.Value), Finite(value?.StandardError), Finite(value?.Lower), Finite(value?.Upper), value is null ? null : Usual, prediction.Unit,
            "predicted by the curve, to first order, with t for its degrees of freedom", prediction.Why);
    }

    /// <summary>A cell of a table, or null when it holds words.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="unit">Unit of its column, "" for none.</param>
    /// <param name="codes">What the codes of missing cells mean.</param>
    public static JsonNumber? Of(Cell cell, string unit, IReadOnlyDictionary<string, string> codes) => cell switch
    {
        MeasuredCell { Whole: { } whole } => Of(whole, unit) with { Trail = cell.Address },
        MeasuredCell measured when measured.U > 0 => new(measured.Value, measured.U, null, null, null, unit, "as the notes of the table say", "no interval was worked out for it") { Trail = cell.Address },
        MeasuredCell measured => Alone(measured.Value, unit, "worked out", "none of its inputs came with an uncertainty") with { Trail = cell.Address },
        NumberCell number => Alone(number.Value, unit, "set, counted or found", "it comes without an uncertainty of its own") with { Trail = cell.Address },
        CensoredCell { Side: CensoredSide.Below } below => new(null, null, null, below.Limit, null, unit, below.LimitName ?? "limit", "it lies below the limit given as high") { Trail = cell.Address },
        CensoredCell above => new(null, null, above.Limit, null, null, unit, above.LimitName ?? "limit", "it lies above the limit given as low") { Trail = cell.Address },
        MissingCell missing => new(null, null, null, null, null, unit, "missing", codes[missing.Code]),
        _ => null,
    };

    /// <summary>Writes it as an object.</summary>
    /// <param name="json">Where to.</param>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        WriteMembers(json);
        json.WriteEndObject();
    }

    /// <summary>Writes its members into an object that says more of it, such as its name.</summary>
    /// <param name="json">Where to.</param>
    public void WriteMembers(Utf8JsonWriter json)
    {
        Member(json, "value", Value);
        Member(json, "u", U);
        Member(json, "low", Low);
        Member(json, "high", High);
        Member(json, "level", Level);
        json.WriteString("unit", Unit);
        json.WriteString("how", How);
        if (Why is not null)
            json.WriteString("why", Why);
        if (Trail is not null)
            json.WriteString("trail", Trail);
    }

    private static void Member(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(name, number);
        else
            json.WriteNull(name);
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}
