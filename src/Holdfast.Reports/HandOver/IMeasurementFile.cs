using Holdfast.Reports.Documents;
using Holdfast.Studies;

namespace Holdfast.Reports.HandOver;

/// <summary>
/// A measurement of the powder written in the open format of its trade, so that other programs read it. Each technique that has such a format writes it in its own
/// folder; it is found by <see cref="Catalogue"/> and needs a constructor without parameters.
/// </summary>
public interface IMeasurementFile
{
    /// <summary>Name of the technique: "nitrogen-sorption".</summary>
    string Technique { get; }

    /// <summary>The format in words: "adsorption information file (AIF)".</summary>
    string Format { get; }

    /// <summary>The file, named by the measurement's id; null where the measurement is none that the format has a place for.</summary>
    /// <param name="measurement">A measurement of the technique.</param>
    /// <param name="study">The study it is part of.</param>
    DocumentFile? Of(Measurement measurement, Study study);
}
