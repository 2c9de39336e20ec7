namespace Holdfast.Studies.Properties;

/// <summary>What a sample is and where it belongs.</summary>
public static class SampleProperties
{
    /// <summary>The code on the vial. It is the key of every table.</summary>
    public static readonly Property Code = Property.Words("code", "sample", "sample", "samplecode", "sampleid", "code", "vial", "vessel", "label", "id", "runid", "name");

    /// <summary>What the sample is for; see <see cref="SampleRole"/>.</summary>
    public static readonly Property Role = Property.Words("role", "role", "role", "type", "kind", "sampletype");

    /// <summary>Another label of the same sample: what a laboratory or an instrument calls it.</summary>
    public static readonly Property Alias = Property.Words("alias", "other label", "alias", "otherlabel", "sentas", "labcode", "labno", "labref");

    /// <summary>The series it belongs to, for example "KIN-05".</summary>
    public static readonly Property Series = Property.Words("series", "series", "series", "set", "experiment");

    /// <summary>Batch of the sorbent.</summary>
    public static readonly Property Batch = Property.Words("batch", "sorbent batch", "batch", "sorbentbatch", "powderbatch", "lot");

    /// <summary>Name of the material.</summary>
    public static readonly Property Material = Property.Words("material", "material", "material", "sorbent", "powder");

    /// <summary>The water it is in: "0.01 mol/L NaNO3", "roof water".</summary>
    public static readonly Property Matrix = Property.Words("matrix", "matrix", "matrix", "water", "medium", "electrolyte", "background");

    /// <summary>The day of the work, kept as ISO 8601.</summary>
    public static readonly Property Day = Property.Words("day", "day", "date", "day", "preparedon", "weighedon", "measuredon");

    /// <summary>Who weighed, filled and separated it.</summary>
    public static readonly Property Author = Property.Words("author", "author", "author", "analyst", "operator", "preparedby", "doneby");

    /// <summary>Anything else she wrote beside it.</summary>
    public static readonly Property Remark = Property.Words("remark", "remark", "remark", "remarks", "note", "notes", "comment", "comments");
}
