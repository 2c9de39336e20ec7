using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>A row of a table of samples: its code as written, and what the other columns say.</summary>
internal sealed class SampleRow(GridRow row, string written, Cell codeCell = default)
{
    /// <summary>The cell that holds the code; blank where the row has none of its own.</summary>
    public Cell CodeCell => codeCell;

    /// <summary>The row.</summary>
    public GridRow Row => row;

    /// <summary>The code as written, in the composed form of Unicode.</summary>
    public string Written { get; set; } = written;

    /// <summary>The code it goes by in the study; null while that is not known.</summary>
    public string? Code { get; set; }

    /// <summary>What the row says the sample is for, or null.</summary>
    public SampleRole? Role { get; set; }

    /// <summary>True when it needs a decision.</summary>
    public bool IsUndecided { get; set; }

    /// <summary>True when an answer leaves it out.</summary>
    public bool IsLeftOut { get; set; }

    /// <summary>What the replicate column says, or null.</summary>
    public string? Replicate { get; set; }

    /// <summary>Scatter that a column of its own gives for the reported concentration, in mg/L, or null.</summary>
    public double? ReportedU { get; set; }

    /// <summary>Facts it brings, by property name.</summary>
    public ImmutableSortedDictionary<string, Fact> Facts { get; set; } = History.Ordinal.Facts;

    /// <summary>Signals it brings: column, and what the cell holds.</summary>
    public List<(Column Column, Readout Readout, Cell Cell)> Signals { get; } = [];

    /// <summary>How many times the portion was diluted, or null when the row does not say.</summary>
    public double? Dilution { get; set; }

    /// <summary>By what a concentration that stands beside an absorbance is multiplied, where that is not what the absorbance is; null for the same.</summary>
    public double? DilutionOfResult { get; set; }

    /// <summary>Which portion, or null when the row does not say.</summary>
    public int? Portion { get; set; }
}
