using System.CommandLine;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli.Verbs;

/// <summary>Ways to dilute.</summary>
internal sealed class Dilute : IVerb
{
    public int Place => 76;

    public IReadOnlyList<string> Examples => ["holdfast dilute --from 1000mg/L --to 40mg/L --make 50mL", "holdfast dilute --from 1g/L --to 2mg/L --make 100mL --as csv"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "an amount that cannot be read, or no way")];

    public Command Command(Door door)
    {
        var form = StudyOptions.FormOption();
        var from = new Option<string>("--from") { Description = "concentration of the stock, with its unit", Required = true };
        var to = new Option<string>("--to") { Description = "concentration wanted, with its unit", Required = true };
        var make = new Option<string>("--make") { Description = "volume needed, with its unit", Required = true };
        var command = new Command("dilute", "ways to dilute with class A pipettes and flasks, with the uncertainty of each") { from, to, make, form };
        command.SetAction(parsed =>
        {
            var (table, trouble) = PreparationTables.Dilution(parsed.GetValue(from)!, parsed.GetValue(to)!, parsed.GetValue(make)!);
            if (table is null)
            {
                door.Error.WriteLine(trouble);
                return Exit.NeedsDecision;
            }

            Printed.Write(table, parsed.GetValue(form)!, door.Out);
            return Exit.Done;
        });
        return command;
    }
}
