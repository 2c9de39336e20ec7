using Holdfast.Claims;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.StudyFigures;

/// <summary>
/// One kind of figure that a study gives, in one file. Kinds are found by <see cref="Studies.Catalogue"/> and need a constructor without parameters; a
/// snapshot of their names makes an addition visible.
/// </summary>
public interface IStudyFigure
{
    /// <summary>Place in the report: lower comes first.</summary>
    int Place { get; }

    /// <summary>The figures of this kind; none when the study has nothing to show.</summary>
    /// <param name="dossier">The study worked out.</param>
    IEnumerable<Figure> Of(Dossier dossier);
}
