namespace Holdfast.Studies.Import.Cif;

/// <summary>What a word of a CIF is.</summary>
internal enum CifTokenKind
{
    /// <summary>"data_name".</summary>
    Data,

    /// <summary>"loop_".</summary>
    Loop,

    /// <summary>"_tag".</summary>
    Tag,

    /// <summary>A value.</summary>
    Value,

    /// <summary>"save_", "stop_" or "global_": words of dictionaries, not of data.</summary>
    Reserved,
}
