namespace Holdfast.Studies;

/// <summary>What a sample is for.</summary>
public enum SampleRole
{
    /// <summary>Sorbent and metal together: what the study is about.</summary>
    Vessel,

    /// <summary>A calibration standard of known concentration.</summary>
    Standard,

    /// <summary>A standard from another stock, read to check the line.</summary>
    CheckStandard,

    /// <summary>All chemicals, no metal.</summary>
    Blank,

    /// <summary>The liquid alone, without anything that emits light: what it shows is scatter.</summary>
    Solvent,

    /// <summary>The metal solution without sorbent, treated like a vessel.</summary>
    Control,

    /// <summary>Sorbent in the same water without metal.</summary>
    SorbentBlank,

    /// <summary>The solution as it was before contact.</summary>
    StartSolution,

    /// <summary>A sample to which a known amount was added.</summary>
    Spike,

    /// <summary>A loaded solid that was dissolved and read.</summary>
    Digest,

    /// <summary>Water that has run through a packed bed.</summary>
    Outlet,
}
