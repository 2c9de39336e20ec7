namespace Holdfast.Studies.Properties;

/// <summary>What keeps a reuse test honest: which powder was carried on, how much of it was left, what stayed in it.</summary>
public static class CycleProperties
{
    /// <summary>Dry mass of sorbent present in this cycle, weighed again.</summary>
    public static readonly Property MassPresent = Property.Number("mass-present", "sorbent mass present", "mg", null, "masspresent", "mpresent", "massincycle", "massleft", "drymassincycle");

    /// <summary>Name of the portion of powder that was carried through the cycles: it pairs a cycle with the one before.</summary>
    public static readonly Property PowderPortion = Property.Words("powder-portion", "portion of powder", "powderportion", "carriedportion", "sameportion", "carriedfrom");

    /// <summary>Liquid that the powder held back from the step before.</summary>
    public static readonly Property HeldBack = Property.Number("held-back", "liquid held back", "mL", null, "heldback", "heldbackvolume", "residualliquid");
}
