using Holdfast.Claims.Analyses;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>
/// Tables of one area of work, in one file: what goes to files and what holdfast reduce prints. Kinds are found by <see cref="Studies.Catalogue"/> and need a
/// constructor without parameters.
/// </summary>
public interface IStudyTables
{
    /// <summary>Name of the area: "nitrogen-sorption".</summary>
    string Name { get; }

    /// <summary>Its tables; none when the study holds nothing for it.</summary>
    /// <param name="evidence">The study worked out.</param>
    IEnumerable<Table> Of(Evidence evidence);
}
