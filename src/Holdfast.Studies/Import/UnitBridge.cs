using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Solutions;

namespace Holdfast.Studies.Import;

/// <summary>The way from a column's unit to the property's: a scale, and where needed the molar mass, or the share of the metal in a salt.</summary>
internal sealed class UnitBridge
{
    private readonly Unit from;
    private readonly Unit to;
    private readonly double? molarMass;
    private readonly double share;
    private readonly bool isAsItIs;

    private UnitBridge(Unit from, Unit to, double? molarMass, double share, string? remark)
    {
        (this.from, this.to, this.molarMass, this.share) = (from, to, molarMass, share);
        isAsItIs = molarMass is null && share.Equals(1) && from.HasSameScale(to);
        Remark = remark;
    }

    /// <summary>What a person should know about the way, or null when nothing is converted.</summary>
    public string? Remark { get; }

    /// <summary>The way, or null when there is none.</summary>
    /// <param name="stated">Unit and basis of the column.</param>
    /// <param name="property">The property.</param>
    /// <param name="analyte">Element that is taken up, or null when not said.</param>
    public static UnitBridge? Between(UnitText.Known stated, Property property, string? analyte)
    {
        if (property.Unit.Length == 0)
            return null;
        var to = Unit.Parse(property.Unit);
        if (property.OfAnother)
            analyte = stated.Basis?.As;
        var species = stated.Basis?.As ?? analyte;
        var (mass, share) = ((double?)null, 1.0);
        if (!stated.Unit.IsConvertibleTo(to))
        {
            if (species is null || Formula.Read(species).Value is not { } formula || !ByMolarMass(stated.Unit, to))
                return null;
            mass = formula.MolarMass;
        }
        if (stated.Basis?.As is { } salt && !string.Equals(salt, analyte, StringComparison.Ordinal))
        {
            // Milligrams of a salt are not milligrams of its metal; for amounts the metal is counted, atom by atom.
            if (analyte is null || Formula.Read(salt).Value is not { } whole || !(whole.Count(analyte) > 0))
                return null;
            share = IsByMass(to) ? whole.MassFraction(analyte).Value : whole.Count(analyte);
        }
        var remark = mass is not null ? $"Kept in {property.Unit}, with the molar mass of {species}." : share != 1 ? $"Kept in {property.Unit} as {analyte}."
            : stated.Unit.HasSameScale(to) ? null : $"Kept in {property.Unit}.";
        return new UnitBridge(stated.Unit, to, mass, share, remark);
    }

    /// <summary>A value in the property's unit, or null when it is too large for a number.</summary>
    /// <param name="value">In the column's unit.</param>
    public double? Convert(double value) => isAsItIs ? Finite(value) : Finite(share * (molarMass is { } m ? MolarUnits.Convert(new Quantity(value, from), to, m).Value : from.Convert(value, to)));

    /// <summary>A difference or uncertainty in the property's unit, or null when it is too large for a number.</summary>
    /// <param name="difference">In the column's unit.</param>
    public double? ConvertDifference(double difference)
        => Finite(share * (molarMass is { } m ? MolarUnits.Convert(new Quantity(difference, from), to, m).Value : from.ConvertDifference(difference, to)));

    private static bool ByMolarMass(Unit from, Unit to)
    {
        var perMole = Unit.Parse("g/mol");
        return (from * perMole).IsConvertibleTo(to) || (from / perMole).IsConvertibleTo(to);
    }

    private static bool IsByMass(Unit unit) => unit.IsConvertibleTo(Unit.Parse("mg/L")) || unit.IsConvertibleTo(Unit.Parse("mg/g"));

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
