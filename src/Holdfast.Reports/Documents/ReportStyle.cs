using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Documents;

/// <summary>The look of a report: readable on a screen in light and dark, and on A4 paper. Nothing is loaded from elsewhere.</summary>
internal static class ReportStyle
{
    /// <summary>The rules.</summary>
    /// <param name="invented">True for a study whose data are invented: every printed page and every printed section says so.</param>
    public static string Css(bool invented) => Screen + Palette.Stylesheet() + Paper + (invented ? Invented : "");

    // Margin boxes are drawn by most engines; the words after each heading serve where they are not.
    private const string Invented = """

        @page { @bottom-left { content: "Invented demo data: nothing was measured."; font: bold 8pt "Liberation Sans", Arial, sans-serif; } }
        @media print { h2::after { content: " (invented demo data)"; font-weight: normal; font-size: 0.7em; } }

        """;

    private const string Screen = """

        :root { color-scheme: light dark; --paper: #ffffff; --ink: #1a1a1a; --soft: #555555; --line: #8a8a8a; --rule: #d4d4d4; --tint: #f3f4f6; --link: #0b4f8a; --mark: #fff1b8; --mark-ink: #1a1a1a; }
        @media screen and (prefers-color-scheme: dark) {
        :root { --paper: #15191e; --ink: #e8eaed; --soft: #b6bbc2; --line: #8f959e; --rule: #3a414a; --tint: #1f252c; --link: #8ab8f0; --mark: #4d4000; --mark-ink: #fff1b8; }
        }
        * { box-sizing: border-box; }
        html { background: var(--paper); color: var(--ink); font: 1rem/1.55 "Liberation Sans", Arial, Helvetica, sans-serif; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
        body { margin: 0 auto; max-width: 60rem; padding: 0 1rem 3rem; overflow-wrap: break-word; }
        h1, h2, h3, h4 { line-height: 1.25; text-wrap: balance; }
        h1 { font-size: 1.9rem; margin: 1.5rem 0 0.5rem; }
        h2 { font-size: 1.4rem; margin: 2.5rem 0 0.75rem; padding-top: 0.5rem; border-top: 2px solid var(--line); }
        h3 { font-size: 1.12rem; margin: 1.75rem 0 0.5rem; }
        h4 { font-size: 0.95rem; margin: 0.9rem 0 0.1rem; color: var(--soft); }
        p, ul, ol, dl { margin: 0.4rem 0 0.8rem; }
        p, li, dd { max-width: 46rem; }
        sup, sub { line-height: 0; }
        li { margin: 0.2rem 0; }
        a { color: var(--link); } cite { font-style: normal; }
        a:focus-visible, summary:focus-visible, .scroll:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
        .skip { position: absolute; left: -100rem; }
        .skip:focus { left: 1rem; top: 0.5rem; background: var(--paper); padding: 0.5rem; z-index: 1; }
        .invented { border: 2px solid currentColor; background: var(--mark); color: var(--mark-ink); font-weight: bold; padding: 0.5rem 0.75rem; margin: 1rem 0; max-width: none; }
        .facts { display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: 0.15rem 1rem; }
        .facts dt { color: var(--soft); } .facts dd { margin: 0; overflow-wrap: anywhere; }
        nav { background: var(--tint); padding: 0.5rem 1rem; } nav h2 { border: 0; margin: 0.25rem 0; padding: 0; font-size: 1.05rem; } nav ol { columns: 16rem; margin: 0.25rem 0; padding-left: 1.6rem; } nav li { margin: 0; padding: 0.1rem 0; break-inside: avoid; }
        .counts { list-style: none; display: flex; flex-wrap: wrap; gap: 0.75rem; padding: 0; }
        .counts li { border: 1px solid var(--line); border-radius: 0.3rem; padding: 0.4rem 0.9rem; } .counts b { font-size: 1.5rem; }
        .ruling::before, .counts li::before { content: ""; display: inline-block; width: 0.8em; height: 0.8em; margin-right: 0.4em; border: 2px solid currentColor; border-radius: 50%; vertical-align: -0.05em; print-color-adjust: exact; }
        .holds::before { background: currentColor; } .open::before { background: linear-gradient(90deg, currentColor 50%, transparent 50%); }
        .contradicted::before { background: linear-gradient(135deg, transparent 42%, currentColor 42%, currentColor 58%, transparent 58%); }
        td.ruling { white-space: nowrap; font-weight: bold; }
        .claim { border-left: 4px solid var(--rule); padding-left: 1rem; margin: 1.75rem 0; } .claim h3 { margin-top: 0; }
        .blank { background: var(--mark); color: var(--mark-ink); white-space: nowrap; }
        .pair { display: grid; grid-template-columns: repeat(auto-fit, minmax(18rem, 1fr)); gap: 0 1rem; }
        .table-block { margin: 1.1rem 0; } .scroll { overflow-x: auto; }
        table { border-collapse: collapse; font-size: 0.86rem; line-height: 1.35; border-top: 2px solid var(--ink); border-bottom: 2px solid var(--ink); }
        caption { text-align: left; font-weight: bold; padding: 0.2rem 0; }
        thead th { border-bottom: 1px solid var(--ink); vertical-align: bottom; text-align: left; }
        th, td { padding: 0.22rem 0.6rem 0.22rem 0; text-align: left; vertical-align: top; font-weight: normal; } thead th { font-weight: bold; } thead th.number { white-space: normal; }
        th:last-child, td:last-child { padding-right: 0; }
        tbody tr + tr > * { border-top: 1px solid var(--rule); }
        td.number, th.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; } td.missing { text-align: right; color: var(--soft); }
        td.text, th.text { min-width: 7rem; max-width: 22rem; }
        #verdicts td.text, #verdicts tbody th { min-width: 9rem; } .chapter #claims td:last-child, .chapter #main-numbers td { white-space: nowrap; min-width: 0; }
        .struck { color: var(--soft); }
        .table-notes, figcaption { font-size: 0.86rem; color: var(--soft); max-width: 46rem; }
        .figure { margin: 1.2rem 0; } .figure svg { width: min(100%, 42rem); height: auto; } .figure summary { cursor: pointer; font-size: 0.86rem; padding: 0.3rem 0; }
        footer { border-top: 2px solid var(--line); margin-top: 3rem; font-size: 0.86rem; color: var(--soft); }

        """;

    private const string Paper = """

        @page { size: A4; margin: 20mm 18mm 22mm; @bottom-right { content: counter(page); font: 8pt "Liberation Sans", Arial, sans-serif; } }
        @page wide { size: A4 landscape; }
        @media print {
        html { font-size: 9.5pt; } body { max-width: none; padding: 0; }
        nav, .skip, details { display: none; }
        a { color: inherit; text-decoration: none; }
        h1, h2, h3, h4, caption { break-after: avoid; } h2 { margin-top: 1.2rem; }
        p, li { orphans: 3; widows: 3; }
        tr, figure, .counts, .trail ul { break-inside: avoid; } tbody tr:first-child { break-before: avoid; } thead { display: table-header-group; }
        .scroll { overflow: visible; } .figure svg { width: 120mm; }
        .chapter { font-size: 9pt; line-height: 1.3; } .chapter p, .chapter ul, .chapter .figure, .chapter .table-block { margin: 0.3rem 0; } .chapter p, .chapter li, .chapter figcaption, .chapter .table-notes { max-width: none; }
        .chapter h2 { margin: 0.8rem 0 0.3rem; } .chapter h3 { margin: 0.6rem 0 0.2rem; } .chapter table { line-height: 1.2; } .chapter td, .chapter th { padding-top: 0.05rem; padding-bottom: 0.05rem; }
        .chapter td.text, .chapter th.text { max-width: none; min-width: 0; } .chapter .figure svg { width: auto; max-width: 100%; } .pair { grid-template-columns: 1fr 1fr; break-inside: avoid; } td.text, th.text, #verdicts td.text, #verdicts tbody th { min-width: 3.6rem; }
        .claim { border: 0; padding: 0; margin: 1.2rem 0; }
        table { font-size: 8pt; } th, td { padding: 0.15rem 0.4rem 0.15rem 0; } .table-notes, figcaption { font-size: 8pt; }
        #section-appendix { page: wide; }
        .invented, .blank { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
        }

        """;
}
