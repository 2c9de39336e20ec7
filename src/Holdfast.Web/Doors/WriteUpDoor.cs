using System.Text;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.HandOver;
using Holdfast.Reports.Reviews;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Workbooks;
using Holdfast.Studies.Package;
using Holdfast.Web.Live;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Holdfast.Web.Doors;

/// <summary>What leaves the bench as a file: chapter, record, workbook, figures, tables, and the originals as they came in. All as downloads.</summary>
internal static class WriteUpDoor
{
    /// <summary>Adds the addresses.</summary>
    public static void Map(IEndpointRouteBuilder to)
    {
        to.MapGet("/write-up/{document}.{kind}", (string document, string kind, OpenStudy study) => (document, kind) switch
        {
            ("chapter" or "record", "html") => Download(Encoding.UTF8.GetBytes(Written(document, study).Html()), "text/html; charset=utf-8", document + ".html"),
            ("chapter" or "record", "docx") => Download(Written(document, study).Docx(), "application/vnd.openxmlformats-officedocument.wordprocessingml.document", document + ".docx"),
            ("chapter" or "record", "pdf") => Download(Written(document, study).Pdf(), "application/pdf", document + ".pdf"),
            ("chapter" or "record", "zip") => Download(Packed.Of(Written(document, study).Latex()), "application/zip", document + "-latex.zip"),
            ("workbook", "xlsx") => Download(StudyWorkbook.Of(Worked(study).Dossier), "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "workbook.xlsx"),
            _ => Results.NotFound(),
        });
        to.MapGet("/write-up/review.html", (OpenStudy study) => Download(Encoding.UTF8.GetBytes(ReviewPage.Of(study.Now.Daybook, Worked(study).Dossier)), "text/html; charset=utf-8", "review.html"));
        to.MapGet("/write-up/package.zip", (OpenStudy study) =>
        {
            var now = study.Now;
            return Download(HandOverPackage.Zip(HandOverPackage.Of(now.Daybook, Worked(study).Dossier, study.Original)), "application/zip", PackageDescriptor.Slug(now.Study.Title) + ".zip");
        });
        to.MapGet("/write-up/tables/{id}.csv", (string id, OpenStudy study)
            => Worked(study).Tables.FirstOrDefault(t => string.Equals(t.Id, id, StringComparison.Ordinal)) is { } table
                ? Download(Encoding.UTF8.GetBytes(TableCsv.Of(table)), "text/csv; charset=utf-8", id + ".csv")
                : Results.NotFound());
        to.MapGet("/write-up/figures/{id}-{width:int}mm.{kind}", (string id, int width, string kind, string? part, OpenStudy study)
            => width is 85 or 174 && Worked(study).Figures.FirstOrDefault(f => string.Equals(f.Id, id, StringComparison.Ordinal)) is { } figure
                ? Drawn(FigurePart.Read(part, figure)?.Of(figure) ?? figure, width, kind)
                : Results.NotFound());
        to.MapGet("/findings/small/{id}.svg", (string id, OpenStudy study)
            => Worked(study).Figures.FirstOrDefault(f => string.Equals(f.Id, id, StringComparison.Ordinal)) is { } figure
                ? Results.File(Encoding.UTF8.GetBytes(SvgFigure.File(figure with { Panels = [figure.Panels[0] with { Residuals = null }] }, Small)), "image/svg+xml")
                : Results.NotFound());
        to.MapGet("/originals/{sha256}", (string sha256, OpenStudy study, HttpResponse response) =>
        {
            if (study.Now.Study.Originals.FirstOrDefault(o => string.Equals(o.Sha256, sha256, StringComparison.Ordinal)) is not { } original)
                return Results.NotFound();
            // Somebody else's file: never shown, never run.
            response.Headers.ContentSecurityPolicy = "sandbox; default-src 'none'";
            return Download(study.Original(sha256), "application/octet-stream", original.FileName);
        });
    }

    // The narrower of both widths of a printed column; of a figure in parts the first, without its residuals.
    private static readonly FigureFormat Small = new(85);

    private static WrittenDocument Written(string document, OpenStudy study) => document == "chapter" ? StudyChapter.Of(Worked(study).Dossier) : StudyReport.Of(Worked(study).Dossier);

    private static IResult Drawn(Figure figure, int width, string kind)
    {
        var format = new FigureFormat(width) { WithNotes = true };
        var name = FormattableString.Invariant($"{figure.Id}-{width}mm.{kind}");
        return kind switch
        {
            "svg" => Download(Encoding.UTF8.GetBytes(SvgFigure.File(figure, format)), "image/svg+xml", name),
            "png" => Download(PngFigure.File(figure, format), "image/png", name),
            "pdf" => Download(PdfFigure.File(figure, format), "application/pdf", name),
            _ => Results.NotFound(),
        };
    }

    private static Drawn Worked(OpenStudy study) => study.Now.Drawn ?? new Drawn(Dossier.Of(study.Now.Study));

    private static IResult Download(byte[] bytes, string type, string name) => Results.File(bytes, type, name);
}
