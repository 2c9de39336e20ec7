namespace Holdfast.Solutions;

/// <summary>One step of a dilution: so much of a solution, made up to the mark.</summary>
/// <param name="Pipette">What it is taken with.</param>
/// <param name="Volume">Volume taken, mL.</param>
/// <param name="Flask">What it is made up in.</param>
public sealed record DilutionStep(VolumetricWare Pipette, double Volume, VolumetricWare Flask)
{
    /// <summary>How many times the step dilutes; no unit.</summary>
    public double Factor => Flask.Nominal / Volume;
}
