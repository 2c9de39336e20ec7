using System.Collections.Immutable;

namespace Holdfast.Studies.History;

/// <summary>
/// Something that was done to a study. The set is closed: these records and no others. Nothing is ever edited in place; a later
/// change says what became of an earlier one, and the present state is the fold of them all.
/// </summary>
public abstract record Change
{
    private protected Change()
    {
    }

    /// <summary>What was done, in a few words that follow "Undo:": "strike V-11".</summary>
    public abstract string Says();

    /// <summary>True when <see cref="Undone"/> may name it.</summary>
    public virtual bool CanBeUndone => true;
}

/// <summary>A study was begun: always the first entry, and only there.</summary>
/// <param name="Title">Short name: "pb-study".</param>
/// <param name="Analyte">Symbol of the element that is taken up ("Ni"), or null when not said.</param>
/// <param name="Invented">True for invented demo data: every screen, export and file says so.</param>
public sealed record StudyBegun(string Title, string? Analyte, bool Invented) : Change
{
    /// <summary>What is said of the study as a whole, by key: "author", "material", "water".</summary>
    public ImmutableSortedDictionary<string, string> Details { get; init; } = Ordinal.Words;

    /// <inheritdoc/>
    public override string Says() => "begin " + Title;

    /// <inheritdoc/>
    public override bool CanBeUndone => false;
}

/// <summary>One acceptance: everything that one or several files, or one typed table, brought. It is undone as a whole.</summary>
public sealed record TakenIn : Change
{
    /// <summary>The files, kept byte for byte under originals/; empty for what was typed.</summary>
    public ImmutableArray<TakenFile> Files { get; init; } = [];

    /// <summary>New samples, and further facts about known ones (by code); a fact given again replaces the earlier one.</summary>
    public ImmutableArray<Sample> Samples { get; init; } = [];

    /// <summary>New runs.</summary>
    public ImmutableArray<Run> Runs { get; init; } = [];

    /// <summary>New readings, with their ids.</summary>
    public ImmutableArray<Reading> Readings { get; init; } = [];

    /// <summary>New measurements of powders, with their ids; null for none, so that entries without them stay as earlier versions wrote them.</summary>
    public ImmutableArray<Measurement>? Measurements { get; init; }

    /// <summary>Remarks of a reader; null for none, so that entries without them stay as earlier versions wrote them.</summary>
    public ImmutableArray<ReviewTaken>? Reviews { get; init; }

    /// <summary>Claims stated.</summary>
    public ImmutableArray<ClaimStated> Claims { get; init; } = [];

    /// <summary>Margins fixed.</summary>
    public ImmutableArray<MarginFixed> Margins { get; init; } = [];

    /// <summary>Balances, glassware and meters.</summary>
    public ImmutableArray<Instrument> Apparatus { get; init; } = [];

    /// <summary>How files of each layout are to be understood from now on: answers given, by signature of the layout.</summary>
    public ImmutableArray<LayoutAnswer> Layouts { get; init; } = [];

    /// <inheritdoc/>
    public override string Says() => Files.Length switch
    {
        0 => "take in what was typed",
        1 => "take in " + Files[0].FileName,
        _ => "take in " + Files[0].FileName + " and " + Ordinal.Text(Files.Length - 1) + " more",
    };
}

/// <summary>A file that was taken in.</summary>
/// <param name="Sha256">Its fingerprint, lower-case hexadecimal; also its name under originals/.</param>
/// <param name="FileName">Its name when it was taken in.</param>
/// <param name="Bytes">Its length.</param>
public sealed record TakenFile(string Sha256, string FileName, long Bytes);

/// <summary>An answer about a file's layout, remembered for the next file that has the same one.</summary>
/// <param name="Layout">Signature of the layout: its headings.</param>
/// <param name="Question">Which question: "decimal", "date", "unit:C0".</param>
/// <param name="Answer">The answer: "comma".</param>
public sealed record LayoutAnswer(string Layout, string Question, string Answer);

/// <summary>What was answered about a layout is asked again for the next file that has it.</summary>
/// <param name="Layout">Signature of the layout.</param>
public sealed record LayoutForgotten(string Layout) : Change
{
    /// <inheritdoc/>
    public override string Says() => "forget the answers for a layout";
}

/// <summary>A line was drawn through a sample or a reading.</summary>
/// <param name="Target">Sample code or reading id.</param>
/// <param name="Reason">Why; a reader will see this.</param>
public sealed record Struck(string Target, string Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => "strike " + Target;
}

/// <summary>A strike was taken back.</summary>
/// <param name="Target">Sample code or reading id.</param>
/// <param name="Reason">Why, or null.</param>
public sealed record Restored(string Target, string? Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => "restore " + Target;
}

/// <summary>A recorded fact was corrected; the earlier one stays in the history.</summary>
/// <param name="Sample">Sample code.</param>
/// <param name="Fact">The fact as it should be; its origin has no original, since it was typed.</param>
/// <param name="Reason">Why; a reader will see this.</param>
public sealed record FactCorrected(string Sample, Fact Fact, string Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => "correct " + Fact.Property + " of " + Sample;
}

/// <summary>A claim was stated, or stated anew under the same id.</summary>
/// <param name="Id">Short address: "equilibrium-120-kin-20".</param>
/// <param name="Rule">Id of the rule that judges it.</param>
/// <param name="Parameters">What it is about, by name; numbers as written with unit.</param>
/// <param name="Wording">Her own words, or null to use the rule's.</param>
public sealed record ClaimStated(string Id, string Rule, ImmutableSortedDictionary<string, string> Parameters, string? Wording) : Change
{
    /// <inheritdoc/>
    public override string Says() => "state claim " + Id;
}

/// <summary>A claim was withdrawn.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Reason">Why, or null.</param>
public sealed record ClaimWithdrawn(string Id, string? Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => "withdraw claim " + Id;
}

/// <summary>A margin was fixed.</summary>
/// <param name="Name">Which margin.</param>
/// <param name="Low">Lower end, in <paramref name="Unit"/>.</param>
/// <param name="High">Upper end, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Its unit.</param>
public sealed record MarginFixed(string Name, double Low, double High, string Unit) : Change
{
    /// <inheritdoc/>
    public override string Says() => "fix margin " + Name;
}

/// <summary>A balance, flask, pipette or meter was recorded, or recorded anew under the same id.</summary>
/// <param name="Instrument">The instrument.</param>
public sealed record ApparatusRecorded(Instrument Instrument) : Change
{
    /// <inheritdoc/>
    public override string Says() => "record " + Instrument.Id;
}

/// <summary>Something was said of the study as a whole.</summary>
/// <param name="Key">Which detail; "title" and "analyte" are the study's own.</param>
/// <param name="Value">What is said, or null to say it no more.</param>
public sealed record DetailSet(string Key, string? Value) : Change
{
    /// <inheritdoc/>
    public override string Says() => (Value is null ? "drop detail " : "set detail ") + Key;
}

/// <summary>Work was put into the Plan. Its address follows from the number of the entry; see <see cref="PlannedWork.Id"/>.</summary>
/// <param name="Work">What is to be done, in a sentence.</param>
/// <param name="Claim">Id of the claim it would settle, or null.</param>
/// <param name="Vessels">How many vessels it needs, or null.</param>
/// <param name="Settings">The settings to run, each with its unit.</param>
public sealed record WorkPlanned(string Work, string? Claim, int? Vessels, ImmutableArray<string> Settings) : Change
{
    /// <inheritdoc/>
    public override string Says() => Claim is null ? "plan work" : "plan work for " + Claim;
}

/// <summary>Planned work was done.</summary>
/// <param name="Id">Its address in the Plan.</param>
public sealed record WorkDone(string Id) : Change
{
    /// <inheritdoc/>
    public override string Says() => "note " + Id + " as done";
}

/// <summary>Planned work was withdrawn: it will not be done.</summary>
/// <param name="Id">Its address in the Plan.</param>
/// <param name="Reason">Why, or null.</param>
public sealed record WorkWithdrawn(string Id, string? Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => "withdraw " + Id;
}

/// <summary>A designed plan was put on the Plan: its vessels are samples from now on, with targets and nothing recorded yet. One entry, undone as a whole.</summary>
/// <param name="Questions">The claims it is to show.</param>
/// <param name="Seed">Seed of its random orders, as digits.</param>
/// <param name="Basis">What was supposed, by option.</param>
/// <param name="Vessels">The rows.</param>
/// <param name="Warnings">What is doubtful about it, with the answers given.</param>
public sealed record SeriesDesigned(
    ImmutableArray<PlannedClaim> Questions, string Seed, ImmutableSortedDictionary<string, string> Basis, ImmutableArray<PlannedVessel> Vessels,
    ImmutableArray<PlanWarning> Warnings) : Change
{
    /// <inheritdoc/>
    public override string Says() => $"plan {Ordinal.Text(Vessels.Length)} vessels for {string.Join(", ", Questions.Select(q => q.Rule))}";
}

/// <summary>Plan and margins were frozen: from here on they change only with a reason, by an <see cref="Amended"/> entry before the change.</summary>
/// <param name="Sha256">Fingerprint of plans and margins, lower-case hexadecimal.</param>
/// <param name="Answers">Warnings accepted as they are, each with its reason.</param>
public sealed record PlanFrozen(string Sha256, ImmutableArray<PlanWarning> Answers) : Change
{
    /// <inheritdoc/>
    public override string Says() => "freeze the plan";

    /// <inheritdoc/>
    public override bool CanBeUndone => false;
}

/// <summary>A moment was given a name, so that a reader can ask what changed since.</summary>
/// <param name="Name">"sent to supervisor".</param>
public sealed record Marked(string Name) : Change
{
    /// <inheritdoc/>
    public override string Says() => "mark “" + Name + "”";
}

/// <summary>A block of cells was typed or pasted over samples: one entry, undone as a whole.</summary>
/// <param name="Cells">The cells, each with the fact as it should be.</param>
/// <param name="Reason">Why what was recorded is corrected; null where nothing was recorded in any of the cells.</param>
public sealed record BlockTyped(ImmutableArray<TypedCell> Cells, string? Reason) : Change
{
    /// <inheritdoc/>
    public override string Says()
        => Cells.Length > 1 && Cells.All(c => string.Equals(c.Fact.Property, Cells[0].Fact.Property, StringComparison.Ordinal))
            ? $"set {Property.Named(Cells[0].Fact.Property)?.Title ?? Cells[0].Fact.Property} of {Ordinal.Text(Cells.Length)} samples"
            : "type " + Ordinal.Text(Cells.Length) + (Cells.Length == 1 ? " cell" : " cells") + " of samples";
}

/// <summary>One cell of a block.</summary>
/// <param name="Sample">Sample code.</param>
/// <param name="Fact">The fact; its origin has no original, since it was typed.</param>
public sealed record TypedCell(string Sample, Fact Fact);

/// <summary>Several things were said of the study as a whole: one entry, undone as a whole.</summary>
/// <param name="Details">What is said, by key; "title" and "analyte" are the study's own, and "" says it no more.</param>
public sealed record StudyDescribed(ImmutableSortedDictionary<string, string> Details) : Change
{
    /// <inheritdoc/>
    public override string Says() => Details.Count == 1 ? "describe the study: " + Details.Keys.First() : $"describe the study: {Ordinal.Text(Details.Count)} settings";
}

/// <summary>Something was said of runs that their files do not say: instrument, wavelength, day.</summary>
/// <param name="Details">What is said.</param>
/// <param name="Reason">Why what a file said is replaced; null where nothing was said.</param>
public sealed record RunsDescribed(ImmutableArray<RunDetail> Details, string? Reason) : Change
{
    /// <inheritdoc/>
    public override string Says()
        => $"set {Details[0].Key.ToLowerInvariant()} of {(Details.Length == 1 ? "run " + Details[0].Run : Ordinal.Text(Details.Length) + " runs")}";
}

/// <summary>One thing said of one run.</summary>
/// <param name="Run">Id of the run.</param>
/// <param name="Key">Which detail: "Instrument".</param>
/// <param name="Value">What is said.</param>
public sealed record RunDetail(string Run, string Key, string Value);

/// <summary>A run is read on the calibration of another run, or on its own again.</summary>
/// <param name="Run">Id of the run.</param>
/// <param name="From">Id of the run whose calibration it uses; null for its own, or what its file says.</param>
/// <param name="Reason">Why, or null.</param>
public sealed record CalibrationChosen(string Run, string? From, string? Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => From is null ? "choose no other calibration for " + Run : $"use the calibration of {From} for {Run}";
}

/// <summary>Samples were given what they are for, with the known concentrations that go with it: one entry, undone as a whole.</summary>
/// <param name="Roles">Which sample is what.</param>
/// <param name="Cells">Facts that go with it; the concentration of a standard.</param>
/// <param name="Reason">Why a recorded fact is corrected; null where none was recorded.</param>
public sealed record RolesGiven(ImmutableArray<RoleGiven> Roles, ImmutableArray<TypedCell> Cells, string? Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => Roles.Length == 1 ? $"give {Roles[0].Sample} another role" : $"give {Ordinal.Text(Roles.Length)} samples another role";
}

/// <summary>What one sample is for.</summary>
/// <param name="Sample">Its code.</param>
/// <param name="Role">What it is for.</param>
public sealed record RoleGiven(string Sample, SampleRole Role);

/// <summary>Something was drawn or said on the picture of a measurement. Its address follows from the number of the entry; see <see cref="PictureMark.Id"/>.</summary>
/// <param name="Measurement">Id of the measurement whose picture it is.</param>
/// <param name="Mark">Word that the technique gives it: "line".</param>
/// <param name="Points">Its points as x, y, x, y …, in pixels of the whole picture; empty for what was only said.</param>
/// <param name="Written">What was said with it: "500 nm"; null for nothing.</param>
/// <param name="Repeats">Id of the mark that was drawn afresh, or null.</param>
public sealed record PictureMarked(string Measurement, string Mark, ImmutableArray<double> Points, string? Written, string? Repeats) : Change
{
    /// <inheritdoc/>
    public override string Says() => $"mark a {Mark} on {Measurement}";
}

/// <summary>The newest entry still in force was undone.</summary>
/// <param name="Entry">Its number.</param>
/// <param name="What">What it had done.</param>
public sealed record Undone(long Entry, string What) : Change
{
    /// <inheritdoc/>
    public override string Says() => "undo: " + What;

    /// <inheritdoc/>
    public override bool CanBeUndone => false;
}

/// <summary>The newest undoing was taken back.</summary>
/// <param name="Entry">Number of the entry that is in force again.</param>
/// <param name="What">What it had done.</param>
public sealed record Redone(long Entry, string What) : Change
{
    /// <inheritdoc/>
    public override string Says() => "redo: " + What;

    /// <inheritdoc/>
    public override bool CanBeUndone => false;
}

/// <summary>The study was sealed: from here on only amendments.</summary>
/// <param name="Note">Why: "submitted".</param>
public sealed record Sealed(string Note) : Change
{
    /// <summary>What was handed in, kept byte for byte under originals/; null for nothing, so that entries without it stay as earlier versions wrote them.</summary>
    public ImmutableArray<TakenFile>? Documents { get; init; }

    /// <summary>Program and version that sealed it; null where an earlier version did not say.</summary>
    public string? Program { get; init; }

    /// <inheritdoc/>
    public override string Says() => "seal: " + Note;

    /// <inheritdoc/>
    public override bool CanBeUndone => false;
}

/// <summary>The reason for the changes that follow it in the same append; a sealed study takes no others.</summary>
/// <param name="Reason">Why; a reader will see this.</param>
public sealed record Amended(string Reason) : Change
{
    /// <inheritdoc/>
    public override string Says() => "amend: " + Reason;

    /// <inheritdoc/>
    public override bool CanBeUndone => false;
}
