using System.Text.Json;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli;

/// <summary>Fitted curves as JSON: each series with its curves, best first, each curve with its parameters; curves that the data refuse are there with their reason.</summary>
internal static class FitsJson
{
    private const string NoInterval = "it comes without an uncertainty of its own";

    /// <summary>The text.</summary>
    /// <param name="fitted">Each series by its name, with its fits.</param>
    /// <param name="asked">What is asked of the curves of a series.</param>
    public static string Of(IReadOnlyList<(string Series, IReadOnlyList<FitResult> Fits)> fitted, Func<string, PredictionQuestion> asked) => Printed.Object(json =>
    {
        json.WriteStartArray("fits");
        foreach (var (series, fits) in fitted)
        {
            var predicted = Predictions.Of(fits, asked(series)).ToLookup(p => p.Curve, StringComparer.Ordinal);
            var sorted = RankingTable.Sorted(fits);
            var best = sorted.Where(f => f.IsFit && f.Aicc is not null).Select(f => f.Aicc).FirstOrDefault();
            foreach (var fit in sorted)
                One(json, series, fit, best, predicted[fit.Card.Name]);
        }

        json.WriteEndArray();
    });

    private static void One(Utf8JsonWriter json, string series, FitResult fit, double? best, IEnumerable<Prediction> predicted)
    {
        json.WriteStartObject();
        json.WriteString("series", series);
        json.WriteString("curve", fit.Card.Name);
        json.WriteString("formula", fit.Card.Formula);
        json.WriteBoolean("settled", fit.IsFit);
        Number(json, "n", fit.N, "", "points");
        json.WriteStartArray("parameters");
        foreach (var parameter in fit.Parameters)
        {
            json.WriteStartObject();
            json.WriteString("symbol", parameter.Symbol);
            json.WriteString("meaning", parameter.Definition.Meaning);
            JsonNumber.Of(parameter, fit).WriteMembers(json);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Number(json, "s", fit.ResidualSd, fit.Weights.Distinct().Count() <= 1 ? fit.Points.YUnit : "", "residual standard deviation; a share where the error is relative");
        Number(json, "lack_of_fit_p", fit.LackOfFit?.Test.P, "", "F test against replicates");
        Number(json, "aicc", fit.Aicc, "", "AICc, the error variance counted as a parameter");
        Number(json, "delta_aicc", fit.IsFit ? fit.Aicc - best : null, "", "AICc less the least of this series");
        json.WriteStartArray("predictions");
        foreach (var prediction in predicted)
            One(json, prediction);
        json.WriteEndArray();
        json.WriteStartArray("findings");
        foreach (var finding in fit.Findings)
        {
            json.WriteStartObject();
            json.WriteString("code", finding.Code);
            json.WriteString("sentence", finding.Sentence);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void One(Utf8JsonWriter json, Prediction prediction)
    {
        json.WriteStartObject();
        json.WriteString("quantity", prediction.Quantity);
        json.WriteString("for", prediction.OfWords);
        Real("start", prediction.Start);
        Real("dose", prediction.Dose);
        Real("share", prediction.Share);
        JsonNumber.Of(prediction).WriteMembers(json);
        json.WriteEndObject();

        void Real(string name, double? value)
        {
            if (value is { } number)
                json.WriteNumber(name, number);
            else
                json.WriteNull(name);
        }
    }

    private static void Number(Utf8JsonWriter json, string name, double? value, string unit, string how)
    {
        json.WritePropertyName(name);
        JsonNumber.Alone(value, unit, how, value is null ? "these data do not give it" : NoInterval).Write(json);
    }
}
