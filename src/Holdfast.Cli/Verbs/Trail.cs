using System.CommandLine;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Trails;

namespace Holdfast.Cli.Verbs;

/// <summary>Where a number comes from.</summary>
internal sealed class Trail : IVerb
{
    private const int MostNear = 12;

    public int Place => 60;

    public IReadOnlyList<string> Examples => ["holdfast trail q:V-12 --as json", "holdfast trail dH:TEMP-298"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "no such number")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var number = new Argument<string>("number") { Description = "q:, R:, Ce:, C0:, D: or Kd: and a sample code; F: or E: of a sensor; of a derived number what it is and its series: dH:TEMP-298, qm:ISO-298@langmuir" };
        var command = options.On(new Command("trail", "where a number comes from: formula, inputs, shares of its variance, readings") { number });
        command.SetAction(parsed =>
        {
            using var study = options.Read(parsed, door);
            var evidence = Evidence.Of(study.Study);
            var address = parsed.GetValue(number)!;
            if (NumberTrail.Of(evidence, address) is not { } trail)
            {
                var missing = MissingResult.Of(evidence).Where(m => m.Samples.Contains(address[(address.IndexOf(':', StringComparison.Ordinal) + 1)..])).ToArray();
                if (missing.Length > 0)
                {
                    door.Error.WriteLine($"{address} cannot be worked out.");
                    Remarks.Missing(missing, door.Error.WriteLine);
                    return Exit.NoSuchThing;
                }

                door.Error.WriteLine($"There is no number {address}. Write what it is and the sample: q:V-12 (uptake), R: (removal), Ce:, C0:, D: (dose), Kd:, F: (signal), E: (efficiency)."
                    + (Near(evidence, address) is { Length: > 0 } near ? $" Of this kind or name there are: {string.Join(", ", near)}." : ""));
                return Exit.NoSuchThing;
            }

            door.Out.WriteLine(parsed.GetValue(options.As) == "json" ? Json(trail) : trail.Text());
            return Exit.Done;
        });
        return command;
    }

    private static string[] Near(Evidence evidence, string address)
    {
        var cut = address.IndexOf(':', StringComparison.Ordinal);
        var (kind, of) = cut < 0 ? ("", address) : (address[..(cut + 1)], address[(cut + 1)..]);
        return [.. DerivedTrails.Of(evidence).All.Select(t => t.Address)
            .Where(a => (kind.Length > 0 && a.StartsWith(kind, StringComparison.OrdinalIgnoreCase)) || (of.Length > 0 && a.Contains(":" + of, StringComparison.OrdinalIgnoreCase)))
            .Take(MostNear)];
    }

    private static string Json(NumberTrail trail) => Printed.Object(json =>
    {
        json.WritePropertyName("number");
        (JsonNumber.Of(trail.Value, trail.Unit) with { Trail = trail.Address }).Write(json);
        json.WriteString("formula", trail.Formula);
        json.WriteStartArray("inputs");
        foreach (var input in trail.Inputs)
        {
            json.WriteStartObject();
            json.WriteString("symbol", input.Symbol);
            json.WritePropertyName("quantity");
            JsonNumber.Of(input.Value, input.Unit).Write(json);
            json.WriteString("from", input.From);
            if (input.Trail is not null)
                json.WriteString("trail", input.Trail);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("budget");
        foreach (var row in trail.Budget.Rows)
        {
            json.WriteStartObject();
            json.WriteString("source", row.Name);
            json.WriteNumber("contribution", row.Contribution);
            json.WriteNumber("share", row.Share);
            if (row.RecordedIn is not null)
                json.WriteString("recorded", row.RecordedIn);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (trail.Carried is { } carried)
            json.WriteNumber("carried_u", carried.U);
        if (trail.Fit is { } fit)
        {
            json.WriteString("fit", fit.How);
            json.WriteString("x", fit.X);
            json.WriteString("y", fit.Y);
            json.WriteStartArray("points");
            foreach (var point in fit.Points)
            {
                json.WriteStartObject();
                json.WriteString("name", point.Name);
                json.WriteNumber("x", point.X);
                json.WriteNumber("y", point.Y);
                json.WriteNumber("fitted", point.Fitted);
                if (point.Trail is not null)
                    json.WriteString("trail", point.Trail);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }
    });
}
