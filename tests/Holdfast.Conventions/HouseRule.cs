namespace Holdfast.Conventions;

/// <summary>A rule of the house and what breaks it.</summary>
internal static class HouseRule
{
    /// <summary>Fails with the rule and everything that breaks it.</summary>
    /// <param name="rule">The rule, in words.</param>
    /// <param name="offenders">What breaks it.</param>
    public static void Holds(string rule, IEnumerable<string?> offenders)
    {
        var listed = offenders.ToList();
        Assert.True(listed.Count == 0, $"{rule}\n  {string.Join("\n  ", listed)}");
    }
}
