using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>How much carbonate a vessel may hold.</summary>
public enum AirContact
{
    /// <summary>Closed, or not recorded: between none and what open water takes up from air.</summary>
    Closed,

    /// <summary>Stirred open to air, or carbonate was added.</summary>
    Open,

    /// <summary>Carbonate was kept out.</summary>
    Excluded,
}

/// <summary>Reads what was recorded about air.</summary>
public static class AirContacts
{
    /// <summary>The contact of a vessel; closed when nothing was recorded.</summary>
    /// <param name="vessel">The vessel.</param>
    public static AirContact Of(Vessel vessel) => Recorded(vessel) ?? AirContact.Closed;

    /// <summary>The contact that was recorded, or null when none was or its words are not understood.</summary>
    /// <param name="vessel">The vessel.</param>
    public static AirContact? Recorded(Vessel vessel)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        return Read(vessel.Sample.Words(CarbonateProperties.Air));
    }

    /// <summary>The contact that words name, or null.</summary>
    /// <param name="words">As written.</param>
    private static AirContact? Read(string? words) => words?.Trim().ToUpperInvariant() switch
    {
        "OPEN" or "AIR" or "OPEN TO AIR" or "CARBONATE ADDED" => AirContact.Open,
        "CLOSED" or "CAPPED" or "SEALED" => AirContact.Closed,
        "EXCLUDED" or "NONE" or "NITROGEN" or "ARGON" or "N2" or "AR" => AirContact.Excluded,
        _ => null,
    };
}
