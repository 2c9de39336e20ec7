using System.CommandLine;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli.Verbs;

/// <summary>The salt for a stock.</summary>
internal sealed class Prepare : IVerb
{
    public int Place => 77;

    public IReadOnlyList<string> Examples => ["holdfast prepare \"Ni(NO3)2.6H2O\" --counts Ni --to 1000mg/L --make 250mL --purity 99%", "holdfast prepare CuSO4.5H2O --counts Cu --to 1g/L --make 100mL"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "an amount or a formula that cannot be read")];

    public Command Command(Door door)
    {
        var form = StudyOptions.FormOption();
        var salt = new Argument<string>("salt") { Description = "formula of the salt, its water included" };
        var counts = new Option<string>("--counts") { Description = "element that the concentration counts", Required = true };
        var to = new Option<string>("--to") { Description = "concentration wanted, with its unit", Required = true };
        var make = new Option<string>("--make") { Description = "volume, with its unit", Required = true };
        var purity = new Option<string>("--purity") { Description = "purity of the salt; 100 % when left out", DefaultValueFactory = _ => "100 %" };
        var command = new Command("prepare", "how much salt a stock solution takes, with the usual cautions") { salt, counts, to, make, purity, form };
        command.SetAction(parsed =>
        {
            var (table, trouble) = PreparationTables.Stock(parsed.GetValue(salt)!, parsed.GetValue(counts)!, parsed.GetValue(to)!, parsed.GetValue(make)!, parsed.GetValue(purity)!);
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
