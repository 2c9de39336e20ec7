using System.CommandLine;
using Holdfast.Reports.StudyTables;
using Holdfast.Safety;

namespace Holdfast.Cli.Verbs;

/// <summary>Usual cautions for substances and steps.</summary>
internal sealed class Cautions : IVerb
{
    public int Place => 74;

    public IReadOnlyList<string> Examples => ["holdfast cautions \"Ni(NO3)2.6H2O\" \"nitric acid\"", "holdfast cautions autoclave --as csv"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "nothing of it is listed, which does not mean harmless")];

    public Command Command(Door door)
    {
        var form = StudyOptions.FormOption();
        var things = new Argument<string[]>("things") { Description = "formulas, names or steps", Arity = ArgumentArity.OneOrMore };
        var command = new Command("cautions", "what to mind with a substance or a step; the supplier's sheet decides") { things, form };
        command.SetAction(parsed =>
        {
            string[] asked = parsed.GetValue(things)!;
            foreach (var unknown in asked.Where(t => Caution.For(t).Count == 0))
                door.Error.WriteLine($"{unknown}: not listed here, which does not mean harmless. Read the supplier's sheet.");
            var found = Caution.For(asked);
            if (found.Count == 0)
                return Exit.NoSuchThing;
            Printed.Write(CautionTable.Of(found), parsed.GetValue(form)!, door.Out);
            door.Error.WriteLine(Caution.Reservation);
            return Exit.Done;
        });
        return command;
    }
}
