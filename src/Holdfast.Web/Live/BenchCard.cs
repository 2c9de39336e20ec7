using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Web.Live;

/// <summary>What is written down of a vial at the bench, in the order of the work, and which vial comes next.</summary>
internal static class BenchCard
{
    /// <summary>One value a screen.</summary>
    public static ImmutableArray<Property> Steps { get; } =
        [BatchProperties.Mass, BatchProperties.Volume, BatchProperties.StartPh, BatchProperties.ContactTime, BatchProperties.EndPh];

    /// <summary>Samples that are filled, shaken and separated: everything but standards, checks and blanks.</summary>
    /// <param name="study">The study.</param>
    public static ImmutableArray<Sample> Vials(Study study)
        => [.. study.Samples.Where(s => s.Role is not (SampleRole.Standard or SampleRole.CheckStandard or SampleRole.Blank))];

    /// <summary>The first value that is not written down yet, or null when all are.</summary>
    /// <param name="study">The study.</param>
    /// <param name="vial">The vial.</param>
    public static Property? Open(Study study, Sample vial) => Steps.FirstOrDefault(s => IsOpen(study, vial, s));

    // A vial that was planned without sorbent has nothing to weigh.
    private static bool IsOpen(Study study, Sample vial, Property step)
        => vial.Fact(step) is null && !(step == BatchProperties.Mass && study.Planned(vial.Code) is { Mass: 0 });

    /// <summary>The vial after this one that has the same value still open; round the end, and null when there is none.</summary>
    /// <param name="study">The study.</param>
    /// <param name="code">Code of this vial.</param>
    /// <param name="step">The value.</param>
    public static Sample? Next(Study study, string code, Property step)
    {
        var vials = Vials(study);
        var here = vials.Select((v, i) => (v.Code, i)).FirstOrDefault(v => string.Equals(v.Code, code, StringComparison.Ordinal)).i;
        return vials[(here + 1)..].Concat(vials[..here]).FirstOrDefault(v => IsOpen(study, v, step));
    }

    /// <summary>How many vials have the value.</summary>
    /// <param name="study">The study.</param>
    /// <param name="step">The value.</param>
    public static string Progress(Study study, Property step)
    {
        var vials = Vials(study);
        return FormattableString.Invariant($"{vials.Count(v => v.Fact(step) is not null)} of {vials.Length}");
    }

    /// <summary>What was planned for a value, with its unit, or null.</summary>
    /// <param name="study">The study.</param>
    /// <param name="vial">The vial.</param>
    /// <param name="step">The value.</param>
    public static string? Target(Study study, Sample vial, Property step)
    {
        if (study.Planned(vial.Code) is not { } planned)
            return null;
        var target = step == BatchProperties.Mass ? planned.Mass : step == BatchProperties.Volume ? planned.Volume
            : step == BatchProperties.StartPh ? planned.Ph : step == BatchProperties.ContactTime ? planned.ContactTime : null;
        return target is { } value ? string.Create(CultureInfo.InvariantCulture, $"{value:0.####} {step.Unit}").TrimEnd() : null;
    }

    /// <summary>Where a planned vial stands: series, block, order and what it is filled with; null for one that was not planned.</summary>
    /// <param name="study">The study.</param>
    /// <param name="vial">The vial.</param>
    public static string? Setting(Study study, Sample vial)
    {
        if (study.Planned(vial.Code) is not { } planned)
            return null;
        var liquid = planned.InitialConcentration > 0 ? $"solution of {planned.InitialConcentration.ToString("0.####", CultureInfo.InvariantCulture)} mg/L" : "water without metal";
        return string.Create(CultureInfo.InvariantCulture,
            $"{planned.Series}, block {planned.Block}, number {planned.StartOrder} to start, {planned.ReadOrder} to read. {PlanTables.RoleWords(planned.Role)}: {liquid}, start at minute {planned.StartsAt:0}{(planned.Temperature is { } t ? $", {t:0.#} K" : "")}{(planned.Batch is { } batch ? $", powder {batch}" : "")}.");
    }

    /// <summary>Since the sorbent went in, or null when that was not stamped or cannot be read.</summary>
    /// <param name="vial">The vial.</param>
    /// <param name="now">The time now.</param>
    public static TimeSpan? Elapsed(Sample vial, DateTimeOffset now)
        => DateTimeOffset.TryParseExact(vial.Fact(BatchProperties.Started)?.Words, "o", CultureInfo.InvariantCulture, DateTimeStyles.None, out var start) && now >= start
            ? now - start
            : null;

    /// <summary>
    /// Vials whose clock runs, the next to be separated first: with the minutes since the sorbent went in and, of a planned vial, those that are left. The start is kept in the study, so that a closed
    /// screen or another phone loses nothing.
    /// </summary>
    /// <param name="study">The study.</param>
    /// <param name="now">The time now.</param>
    public static ImmutableArray<(Sample Vial, TimeSpan Since, TimeSpan? Left)> Running(Study study, DateTimeOffset now)
        => [.. Vials(study).Where(v => v.Fact(BatchProperties.ContactTime) is null && !study.IsStruck(v))
            .Select(v => (Vial: v, Since: Elapsed(v, now), Planned: study.Planned(v.Code)?.ContactTime)).Where(v => v.Since is not null)
            .Select(v => (v.Vial, v.Since!.Value, Left: v.Planned is { } minutes ? TimeSpan.FromMinutes(minutes) - v.Since.Value : (TimeSpan?)null))
            .OrderBy(v => v.Left is null).ThenBy(v => v.Left).ThenByDescending(v => v.Item2)];
}
