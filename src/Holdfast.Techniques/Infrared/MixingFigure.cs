using Holdfast.Claims;
using Holdfast.Infrared;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.Infrared;

/// <summary>What is left of a composite's spectrum once its parents are taken off, for every claim that it is more than a mixture of them.</summary>
internal sealed class MixingFigure : IStudyFigure
{
    public int Place => 6;

    public IEnumerable<Figure> Of(Dossier dossier)
    {
        var study = InfraredStudy.Of(dossier.Evidence);
        foreach (var claim in dossier.Verdicts.Select(v => v.Claim).Where(c => c.Rule == MoreThanMixture.RuleId))
        {
            if (study.For(claim.Words("composite")) is [var composite, ..] && study.For(claim.Words("first")) is [var first, ..] && study.For(claim.Words("second")) is [var second, ..]
                && SpectralMixing.Of(composite.Spectrum!, first.Spectrum!, second.Spectrum!).Value is { } mixing)
                yield return One(composite.Powder, first.Powder, second.Powder, mixing, dossier);
        }
    }

    private static Figure One(string composite, string first, string second, SpectralMixing mixing, Dossier dossier)
    {
        var noise = SpectralNoise.Of(mixing.Wavenumbers, mixing.Residuals);
        return new(
            StudyFigure.Id("mixing", composite), $"{composite} less {first} and {second}",
            $"Shares {InWords.Plain(mixing.Shares[0])} and {InWords.Plain(mixing.Shares[1])} leave {InWords.Count(mixing.LeftOver.Count, "stretch", "stretches")} of at least {InWords.Plain(SpectralMixing.LeastResidual)} standard deviations of the noise.",
            [
                new Panel(new Axis("wavenumber", "cm^-1", "wavenumber") { Reversed = true }, new Axis("ΔA", null, "absorbance that is left over"),
                [
                    new Zone(AxisName.Y, -SpectralMixing.LeastResidual * noise, SpectralMixing.LeastResidual * noise, "noise"),
                    new Trace([.. mixing.Wavenumbers.Zip(mixing.SmoothedResiduals)]),
                ]),
            ])
        {
            Notes = ["Smoothed over nine points for the eye. A composite that leaves nothing over shows no interaction; that does not show that there is none."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
