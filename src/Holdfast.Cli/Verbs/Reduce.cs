using System.CommandLine;
using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli.Verbs;

/// <summary>Readings to quantities.</summary>
internal sealed class Reduce : IVerb
{
    public int Place => 50;

    public IReadOnlyList<string> Examples => ["holdfast reduce", "holdfast reduce KIN-05 --as csv"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "no such series")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var series = new Argument<string?>("series") { Description = "one series, or one technique of characterisation; everything when left out", Arity = ArgumentArity.ZeroOrOne };
        var command = options.On(new Command("reduce", "readings to quantities: concentrations, removal, uptake, each with uncertainty") { series });
        command.SetAction(parsed =>
        {
            using var study = options.Read(parsed, door);
            var evidence = Evidence.Of(study.Study);
            var name = parsed.GetValue(series);
            var vessels = evidence.Vessels.Where(v => name is null || string.Equals(v.Sample.Series, name, StringComparison.OrdinalIgnoreCase)).ToArray();
            var areas = ReportTables.OfAreas(evidence).Where(a => a.Tables.Length > 0).ToArray();
            if (areas.FirstOrDefault(a => string.Equals(a.Name, name, StringComparison.OrdinalIgnoreCase)) is { Name: not null } area)
            {
                foreach (var table in area.Tables)
                    Printed.Write(table, parsed.GetValue(options.As)!, door.Out);
                return Exit.Done;
            }

            // One table of an area, by the name that taking a file in tells.
            if (areas.SelectMany(a => a.Tables).FirstOrDefault(t => string.Equals(t.Id, name, StringComparison.OrdinalIgnoreCase)) is { } one)
            {
                Printed.Write(one, parsed.GetValue(options.As)!, door.Out);
                return Exit.Done;
            }

            if (vessels.Length == 0 && name is not null)
            {
                door.Error.WriteLine($"This study has no series {name}. Series: {string.Join(", ", evidence.Series.Select(s => s.Name).Concat(areas.Select(a => a.Name)))}.");
                return Exit.NoSuchThing;
            }

            // What cannot be comes first: nobody should read a table of it before.
            foreach (var impossible in evidence.Findings.Where(f => f.Code == ImpossibleResults.Code))
                door.Error.WriteLine($"{impossible.Code} {impossible.Sentence}");
            foreach (var run in evidence.Runs.Where(r => r.Curve is not null && r.BorrowedFrom is null))
            {
                var curve = run.Curve!;
                options.Remark(parsed, door, string.Create(CultureInfo.InvariantCulture,
                    $"{run.Run.Id}: {curve.Kind.ToString().ToLowerInvariant()} to {curve.Top:0.###} mg/L, detection limit {curve.Limits.Detection.Value:0.####} mg/L ({curve.Limits.Detection.Formula})"));
                foreach (var reason in curve.Reasons)
                    options.Remark(parsed, door, "  " + reason);
            }

            // The first table of an area sums it up; all of them, and other forms, have the area's name.
            if (name is null && parsed.GetValue(options.As) is "text")
            {
                foreach (var characterised in areas)
                    Printed.Write(characterised.Tables[0], "text", door.Out);
                if (vessels.Length == 0 && areas.Length > 0)
                    return Exit.Done;
            }
            else if (name is null && areas.Length > 0)
            {
                options.Remark(parsed, door, $"also: {string.Join(", ", areas.Select(a => "holdfast reduce " + a.Name))}");
            }

            Printed.Write(VesselTable.Of("quantities", name is null ? "Quantities" : $"Quantities of series {name}", vessels, evidence), parsed.GetValue(options.As)!, door.Out);
            var missing = MissingResult.Of(evidence, name is null ? null : evidence.SeriesNamed(name)?.Name);
            Remarks.Missing(missing, s => options.Remark(parsed, door, s));
            Remarks.Tell(evidence.Findings.Where(f => f.Code != ImpossibleResults.Code).Concat(vessels.SelectMany(v => v.Findings)).Where(f => !missing.Any(m => m.Says(f))), s => options.Remark(parsed, door, s));
            return Exit.Done;
        });
        return command;
    }
}
