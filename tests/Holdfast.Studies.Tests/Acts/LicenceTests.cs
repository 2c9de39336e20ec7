using Holdfast.Studies.Acts;

namespace Holdfast.Studies.Tests.Acts;

public class LicenceTests
{
    // Identifiers of the SPDX licence list.
    [Theory]
    [InlineData("CC-BY-4.0", "CC-BY-4.0")]
    [InlineData("cc by 4", "CC-BY-4.0")]
    [InlineData("CC BY", "CC-BY-4.0")]
    [InlineData("cc0", "CC0-1.0")]
    [InlineData("CC-BY-SA 4.0", "CC-BY-SA-4.0")]
    [InlineData("GPL", null)]
    [InlineData("", null)]
    public void Named_AsPeopleWriteIt_IsTheIdentifier(string typed, string? id) => Assert.Equal(id, Licence.Named(typed)?.Id);

    // Check digits by hand after ISO/IEC 7064 MOD 11-2: fifteen zeros give total 0, (12 − 0) mod 11 = 1.
    [Theory]
    [InlineData("0000-0000-0000-0001", "0000-0000-0000-0001")]
    [InlineData("https://orcid.org/0000-0000-0000-0001", "0000-0000-0000-0001")]
    [InlineData("0000000000000001", "0000-0000-0000-0001")]
    [InlineData("0000-0000-0000-0002", null)]
    [InlineData("0000-0000-0000-001", null)]
    [InlineData("0000-0001-0000-0001", null)]
    [InlineData("", null)]
    public void Orcid_IsReadWhereItsLastDigitChecks(string typed, string? read) => Assert.Equal(read, Orcid.Read(typed));

    [Fact]
    public void Orcid_DigitOfTen_IsX()
    {
        // 2·d over the last place alone: d = 1 gives total 2, (12 − 2) mod 11 = 10, written X.
        Assert.Equal("0000-0000-0000-001X", Orcid.Read("0000-0000-0000-001x"));
    }
}
