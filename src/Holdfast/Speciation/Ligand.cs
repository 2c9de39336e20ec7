namespace Holdfast.Speciation;

/// <summary>Something dissolved that binds metals; its constants are the caller's.</summary>
/// <param name="Name">Its name: "Cl", "NH3", "citrate".</param>
/// <param name="Charge">Charge of the form that is a component.</param>
/// <param name="Total">Total, mol/L, above 0.</param>
public sealed record Ligand(string Name, int Charge, double Total)
{
    /// <summary>Total, mol/L, above 0.</summary>
    public double Total { get; } = MetalTotal.Checked(Total);
}

/// <summary>A complex of components: Σ parts + q H2O = complex + q H+, 25 °C, zero ionic strength.</summary>
/// <param name="Formula">Its formula.</param>
/// <param name="Parts">How many of each component, by name of the ion ("Fe(III)") or ligand.</param>
/// <param name="Hydroxides">q, protons given off; negative for protons taken up.</param>
/// <param name="LgBeta">lg of the constant.</param>
public sealed record LigandComplex(string Formula, IReadOnlyDictionary<string, int> Parts, int Hydroxides, double LgBeta);

/// <summary>A metal ion with its total.</summary>
/// <param name="Ion">The ion.</param>
/// <param name="Total">Total, mol/L, above 0.</param>
public sealed record MetalTotal(MetalIon Ion, double Total)
{
    /// <summary>Total, mol/L, above 0.</summary>
    public double Total { get; } = Checked(Total);

    /// <summary>A total above 0; what is not there is left out.</summary>
    /// <param name="total">mol/L.</param>
    internal static double Checked(double total)
        => total > 0 && double.IsFinite(total) ? total : throw new ArgumentOutOfRangeException(nameof(total), total, "A total must be above 0 mol/L; leave out what is not there.");
}
