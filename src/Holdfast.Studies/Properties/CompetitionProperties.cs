namespace Holdfast.Studies.Properties;

/// <summary>What is recorded when two metals compete in one vessel. Amounts, since the two are compared by amount.</summary>
public static class CompetitionProperties
{
    /// <summary>Symbol of the second metal: "Zn".</summary>
    public static readonly Property Rival = Property.Words("rival", "second metal", "rival", "competitor", "secondmetal", "competingion");

    /// <summary>Concentration of each metal at the start.</summary>
    public static readonly Property InitialOfEach = Property.Number("initial-of-each", "initial concentration of each metal", "mmol/L", null, "c0ofeach", "initialofeach", "eachatstart");

    /// <summary>What is left of the metal that the study is about.</summary>
    public static readonly Property AnalyteLeft = Property.Number("analyte-left", "analyte left", "mmol/L", null, "analyteleft", "nileft", "pbleft", "cdleft", "culeft", "znleft");

    /// <summary>What is left of the second metal.</summary>
    public static readonly Property RivalLeft = Property.Number("rival-left", "second metal left", "mmol/L", null, "rivalleft", "competitorleft", "secondmetalleft") with { OfAnother = true };
}
