namespace Holdfast.Planning;

/// <summary>Waste of one kind that a plan leaves. Streams are kept apart because they are treated apart; the local rules decide how.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Volume">Liquid, mL; 0 for a solid.</param>
/// <param name="Solid">Solid, mg; 0 for a liquid.</param>
/// <param name="Metal">Metal in it by the plan, mg.</param>
public sealed record PlanWaste(string Name, double Volume, double Solid, double Metal)
{
    /// <summary>
    /// The streams of a plan, by what the vessels hold at the end. The metal of all streams is what went in: the check of the plan.
    /// </summary>
    /// <param name="vessels">Volume in mL, start and end concentration in mg/L and sorbent in mg of every vessel.</param>
    /// <param name="stock">Metal prepared beyond what the vessels take, mg.</param>
    /// <param name="standardsVolume">Acidified standards, checks and reagent blanks, mL.</param>
    /// <param name="standardsMetal">Metal in them, mg.</param>
    public static IReadOnlyList<PlanWaste> Of(
        IEnumerable<(double Volume, double Start, double End, double Sorbent)> vessels, double stock, double standardsVolume, double standardsMetal)
    {
        ArgumentNullException.ThrowIfNull(vessels);
        double volume = 0, liquid = 0, clean = 0, solid = 0, loaded = 0;
        foreach (var v in vessels)
        {
            if (v.Start > 0)
                (volume, liquid) = (volume + v.Volume, liquid + v.Volume * v.End / 1000);
            else
                clean += v.Volume;
            (solid, loaded) = (solid + v.Sorbent, loaded + v.Volume * (v.Start - v.End) / 1000);
        }

        return
        [
            new("liquid with metal, filtrates and leftover solutions", volume, 0, liquid + stock),
            new("acidified standards, checks and blanks", standardsVolume, 0, standardsMetal),
            new("liquid of controls without metal", clean, 0, 0),
            new("loaded sorbent with filters", 0, solid, loaded),
        ];
    }
}
