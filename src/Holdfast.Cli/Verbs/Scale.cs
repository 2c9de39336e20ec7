using System.CommandLine;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli.Verbs;

/// <summary>The reagents for a batch of powder.</summary>
internal sealed class Scale : IVerb
{
    public int Place => 78;

    public IReadOnlyList<string> Examples =>
    [
        "holdfast scale \"Ca10(PO4)6(OH)2\" --make 5g --from \"Ca(NO3)2.4H2O=Ca\" --from \"(NH4)2HPO4=P\"",
        "holdfast scale \"Ca10(PO4)6(OH)2\" --make 25g --was 5g --yield 79% --from \"Ca(NO3)2.4H2O=Ca\" --purity \"Ca(NO3)2.4H2O=99%\" --from \"(NH4)2HPO4=P\"",
    ];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "an amount or a formula that cannot be read")];

    public Command Command(Door door)
    {
        var form = StudyOptions.FormOption();
        var product = new Argument<string>("product") { Description = "formula of what is made" };
        var make = new Option<string>("--make") { Description = "mass of product wanted, with its unit", Required = true };
        var from = new Option<string[]>("--from") { Description = "REAGENT=ELEMENT it brings, its water included; once for each", Required = true };
        var purity = new Option<string[]>("--purity") { Description = "REAGENT=PURITY; 100 % when left out" };
        var excess = new Option<string[]>("--excess") { Description = "REAGENT=EXCESS, as 5%; none when left out" };
        var yield = new Option<string>("--yield") { Description = "yield expected; 100 % when left out", DefaultValueFactory = _ => "100 %" };
        var was = new Option<string>("--was") { Description = "mass of the batch that the recipe is known from" };
        var command = new Command("scale", "reagents for a batch of powder, and what does not grow with it") { product, make, from, purity, excess, yield, was, form };
        command.SetAction(parsed =>
        {
            var (reagents, trouble) = NamedValues.Read(parsed.GetValue(from), "--from");
            var (pure, impure) = NamedValues.Read(parsed.GetValue(purity), "--purity");
            var (more, unread) = NamedValues.Read(parsed.GetValue(excess), "--excess");
            trouble ??= impure ?? unread;
            var tables = trouble is null ? PreparationTables.Batch(parsed.GetValue(product)!, parsed.GetValue(make)!, reagents!, pure!, more!, parsed.GetValue(yield)!, parsed.GetValue(was)) : ([], trouble);
            if (tables.Trouble is not null)
            {
                door.Error.WriteLine(tables.Trouble);
                return Exit.NeedsDecision;
            }

            Printed.Write(parsed.GetValue(form) == "csv" ? tables.Tables[..1] : tables.Tables, parsed.GetValue(form)!, door.Out);
            return Exit.Done;
        });
        return command;
    }
}
