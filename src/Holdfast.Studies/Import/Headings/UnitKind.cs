using Holdfast.Amounts;

namespace Holdfast.Studies.Import.Headings;

/// <summary>What sort of thing a unit measures, as far as the columns of a bench sheet go.</summary>
internal enum UnitKind
{
    /// <summary>Nothing is stated.</summary>
    None,

    /// <summary>A unit is stated that is none of these.</summary>
    Other,

    /// <summary>Mass or amount per volume.</summary>
    Concentration,

    /// <summary>Mass.</summary>
    Mass,

    /// <summary>Volume.</summary>
    Volume,

    /// <summary>Time.</summary>
    Time,

    /// <summary>Temperature.</summary>
    Temperature,

    /// <summary>Per cent.</summary>
    Share,

    /// <summary>Mass or amount per mass of powder.</summary>
    Loading,

    /// <summary>Turns per time.</summary>
    Speed,
}

/// <summary>Tells what a unit measures.</summary>
internal static class UnitKinds
{
    private static readonly (UnitKind Kind, Unit Of)[] Known =
    [
        (UnitKind.Concentration, Unit.Parse("mg/L")), (UnitKind.Concentration, Unit.Parse("mmol/L")), (UnitKind.Mass, Unit.Parse("mg")), (UnitKind.Volume, Unit.Parse("mL")),
        (UnitKind.Time, Unit.Parse("min")), (UnitKind.Temperature, Unit.Parse("K")), (UnitKind.Speed, Unit.Parse("1/min")), (UnitKind.Loading, Unit.Parse("mmol/g")),
    ];

    /// <summary>What it measures.</summary>
    /// <param name="text">What was said about the unit.</param>
    public static UnitKind Of(UnitText text) => text switch
    {
        UnitText.Known { Unit.IsOne: true } or UnitText.Absent => UnitKind.None,
        UnitText.Known known => Of(known.Unit),
        UnitText.Ambiguous several => Of(several.Candidates[0]),
        _ => UnitKind.Other,
    };

    private static UnitKind Of(Unit unit)
    {
        // mg/g and % are both plain numbers to arithmetic; their spelling tells them apart.
        if (unit.Dimension == Dimension.None)
            return unit.Plain.Contains('/', StringComparison.Ordinal) ? UnitKind.Loading : UnitKind.Share;
        foreach (var (kind, known) in Known)
        {
            if (unit.IsConvertibleTo(known))
                return kind;
        }

        return UnitKind.Other;
    }
}
