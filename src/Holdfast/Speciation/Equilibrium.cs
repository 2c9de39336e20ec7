namespace Holdfast.Speciation;

/// <summary>A water at equilibrium.</summary>
/// <param name="Ph">pH.</param>
/// <param name="IonicStrength">Ionic strength that the activity coefficients were taken at, mol/L.</param>
/// <param name="Components">Names of the components: metal ions, ligands, "CO3" in a closed vessel.</param>
/// <param name="LgActivities">lg activity of each component's free form.</param>
/// <param name="Dissolved">Dissolved total of each component, mol/L.</param>
/// <param name="Species">Every dissolved species, hydrogen and hydroxide ions among them.</param>
/// <param name="Precipitates">Solids that formed.</param>
/// <param name="Charge">Sum of charge times concentration over all species, mol/L: what other ions must balance.</param>
/// <param name="Open">The largest share of a component's total that the balances leave open; no unit.</param>
/// <param name="Steps">Newton steps of the last solution.</param>
public sealed record Equilibrium(
    double Ph, double IonicStrength, IReadOnlyList<string> Components, IReadOnlyList<double> LgActivities, IReadOnlyList<double> Dissolved,
    IReadOnlyList<SpeciesAmount> Species, IReadOnlyList<Precipitate> Precipitates, double Charge, double Open, int Steps);

/// <summary>A dissolved species and how much of it there is.</summary>
/// <param name="Formula">Its formula without the charge.</param>
/// <param name="Charge">Its charge.</param>
/// <param name="Concentration">mol/L.</param>
public sealed record SpeciesAmount(string Formula, int Charge, double Concentration);

/// <summary>A solid that formed.</summary>
/// <param name="Solid">The solid.</param>
/// <param name="Amount">Formula units, mol per litre of water.</param>
public sealed record Precipitate(Solid Solid, double Amount);
