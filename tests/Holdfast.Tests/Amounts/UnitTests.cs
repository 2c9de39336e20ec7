using CsCheck;
using Holdfast.Amounts;
using Holdfast.Testing;

namespace Holdfast.Tests.Amounts;

public class UnitTests
{
    [Theory]
    [InlineData("mg/L", "mg/L")]
    [InlineData("mg/l", "mg/L")]
    [InlineData("mg L-1", "mg/L")]
    [InlineData("mg L −1", "mg/L")]
    [InlineData("mg L–1", "mg/L")]
    [InlineData("mg·L⁻¹", "mg/L")]
    [InlineData("mg.L-1", "mg/L")]
    [InlineData("mg*L^-1", "mg/L")]
    [InlineData("mg L^{-1}", "mg/L")]
    [InlineData("mg L**-1", "mg/L")]
    [InlineData("mg per L", "mg/L")]
    [InlineData("(mg/L)", "mg/L")]
    [InlineData("[mg/L]", "mg/L")]
    [InlineData("mg / L", "mg/L")]
    [InlineData("ug/mL", "ug/mL")]
    [InlineData("\u00B5g/mL", "ug/mL")]
    [InlineData("\u03BCg/ml", "ug/mL")]
    [InlineData("mcg/mL", "ug/mL")]
    [InlineData("umol/L", "umol/L")]
    [InlineData("µmol L⁻¹", "umol/L")]
    [InlineData("mmol/g", "mmol/g")]
    [InlineData("M", "M")]
    [InlineData("mM", "mM")]
    [InlineData("µM", "uM")]
    [InlineData("mL", "mL")]
    [InlineData("ml", "mL")]
    [InlineData("cc/g", "mL/g")]
    [InlineData("L", "L")]
    [InlineData("min", "min")]
    [InlineData("Minutes", "min")]
    [InlineData("h", "h")]
    [InlineData("hrs", "h")]
    [InlineData("s", "s")]
    [InlineData("day", "d")]
    [InlineData("days", "d")]
    [InlineData("nm", "nm")]
    [InlineData("Å", "angstrom")]
    [InlineData("\u212B", "angstrom")]
    [InlineData("m2/g", "m2/g")]
    [InlineData("m² g⁻¹", "m2/g")]
    [InlineData("m^2/g", "m2/g")]
    [InlineData("cm3/g", "cm3/g")]
    [InlineData("cm³/g STP", "cm3(STP)/g")]
    [InlineData("cm3(STP)/g", "cm3(STP)/g")]
    [InlineData("cm³ STP g⁻¹", "cm3(STP)/g")]
    [InlineData("cm-1", "1/cm")]
    [InlineData("1/cm", "1/cm")]
    [InlineData("%", "%")]
    [InlineData("wt.%", "wt%")]
    [InlineData("at %", "at%")]
    [InlineData("K", "K")]
    [InlineData("degC", "degC")]
    [InlineData("°C", "degC")]
    [InlineData("deg C", "degC")]
    [InlineData("g/L", "g/L")]
    [InlineData("1/min", "1/min")]
    [InlineData("/min", "1/min")]
    [InlineData("min⁻¹", "1/min")]
    [InlineData("L/mg", "L/mg")]
    [InlineData("g/(mg min)", "g/(mg min)")]
    [InlineData("g/(mg·min)", "g/(mg min)")]
    [InlineData("g/mg/min", "g/(mg min)")]
    [InlineData("g mg-1 min-1", "g/(mg min)")]
    [InlineData("mg/(g min^0.5)", "mg/(g min^0.5)")]
    [InlineData("mg g-1 min-0.5", "mg/(g min^0.5)")]
    [InlineData("mg/(g min^(1/2))", "mg/(g min^0.5)")]
    [InlineData("mg/L min-1", "mg/(L min)")]
    [InlineData("J", "J")]
    [InlineData("kJ/mol", "kJ/mol")]
    [InlineData("kJ mol⁻¹", "kJ/mol")]
    [InlineData("J/(mol K)", "J/(mol K)")]
    [InlineData("J mol-1 K-1", "J/(mol K)")]
    [InlineData("a.u.", "a.u.")]
    [InlineData("arb. units", "a.u.")]
    [InlineData("a. u.", "a.u.")]
    [InlineData("counts/s", "counts/s")]
    [InlineData("° 2θ", "deg")]
    [InlineData("deg", "deg")]
    [InlineData("1", "1")]
    [InlineData("-", "1")]
    [InlineData("dimensionless", "1")]
    public void Read_ASpellingOfTheBench_GivesThePlainForm(string text, string plain)
    {
        var known = Assert.IsType<UnitText.Known>(Unit.Read(text));
        Assert.Equal(plain, known.Unit.Plain);
        Assert.Equal(known.Unit, Unit.Parse(plain));
    }

    [Theory]
    [InlineData("ppm", "mg/L", "mg/kg")]
    [InlineData("PPM", "mg/L", "mg/kg")]
    [InlineData("p.p.m.", "mg/L", "mg/kg")]
    [InlineData("ppb", "ug/L", "ug/kg")]
    [InlineData("J/mol K", "J/(mol K)", "J K/mol")]
    [InlineData("g/mg·min", "g/(mg min)", "g min/mg")]
    [InlineData("MG/L", "mg/L", null)]
    [InlineData("UG/ML", "ug/mL", null)]
    [InlineData("C", "degC", null)]
    public void Read_ATextWithSeveralMeanings_AsksAndDoesNotChoose(string text, string first, string? second)
    {
        var ambiguous = Assert.IsType<UnitText.Ambiguous>(Unit.Read(text));
        Assert.Equal(first, ambiguous.Candidates[0].Plain);
        Assert.Equal(second, ambiguous.Candidates.ElementAtOrDefault(1)?.Plain);
        Assert.Throws<ArgumentException>(() => Unit.Parse(text));
    }

    [Theory]
    [InlineData("bananas")]
    [InlineData("mg/")]
    [InlineData("mg/(L")]
    [InlineData("mg-L")]
    [InlineData("Ni 232.0 nm")]
    [InlineData("min^(1/0)")]
    [InlineData("10^3 L/mol")]
    public void Read_AnythingElse_IsUnknownAndKept(string text)
    {
        var unknown = Assert.IsType<UnitText.Unknown>(Unit.Read(text));
        Assert.Equal(text, unknown.Text);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData(null)]
    public void Read_NoText_IsAbsent(string? text) => Assert.IsType<UnitText.Absent>(Unit.Read(text));

    [Theory]
    [InlineData("mg Ni/L", "mg/L", "Ni", SorbentState.NotStated)]
    [InlineData("mg N/L", "mg/L", "N", SorbentState.NotStated)]
    [InlineData("mg(Ni)/L", "mg/L", "Ni", SorbentState.NotStated)]
    [InlineData("mg/L as PO4", "mg/L", "PO4", SorbentState.NotStated)]
    [InlineData("mg/g dry", "mg/g", null, SorbentState.Dry)]
    [InlineData("mg/(g dry)", "mg/g", null, SorbentState.Dry)]
    [InlineData("mmol Ni/g (wet)", "mmol/g", "Ni", SorbentState.Wet)]
    public void Read_ATextThatSaysAsWhatAndPerWhat_KeepsTheBasis(string text, string plain, string? species, SorbentState per)
    {
        var known = Assert.IsType<UnitText.Known>(Unit.Read(text));
        Assert.Equal(plain, known.Unit.Plain);
        Assert.Equal(new Basis(species, per), known.Basis);
    }

    // Sizes restated by hand from the SI Brochure, 9th edition (BIPM 2019), tables 2, 7 and 8; STP volume from CODATA 2018 R.
    [Theory]
    [InlineData(1000, "mg/L", "g/L", 1)]
    [InlineData(1, "ug/mL", "mg/L", 1)]
    [InlineData(2.5, "mM", "mmol/L", 2.5)]
    [InlineData(1, "M", "mol/L", 1)]
    [InlineData(1, "h", "min", 60)]
    [InlineData(1, "d", "s", 86400)]
    [InlineData(25, "degC", "K", 298.15)]
    [InlineData(298.15, "K", "degC", 25)]
    [InlineData(12, "%", "1", 0.12)]
    [InlineData(1, "angstrom", "nm", 0.1)]
    [InlineData(1, "cm3/g", "mL/g", 1)]
    [InlineData(1, "m2/g", "cm2/mg", 10)]
    [InlineData(1, "kJ/mol", "J/mol", 1000)]
    [InlineData(1, "kcal/mol", "kJ/mol", 4.184)]
    [InlineData(760, "Torr", "kPa", 101.325)]
    [InlineData(1, "eV", "J", 1.602176634e-19)]
    [InlineData(22413.96954, "cm3(STP)", "mol", 1)]
    [InlineData(1, "g/(mg min)", "g/(mg h)", 60)]
    [InlineData(60, "rpm", "Hz", 1)]
    [InlineData(180, "deg", "rad", Math.PI)]
    public void Convert_BetweenUnitsOfOneDimension_FollowsTheDefinitions(double value, string from, string to, double expected)
        => Agree.Digits(9.5, expected, Unit.Parse(from).Convert(value, Unit.Parse(to)), $"{from} to {to}");

    [Fact]
    public void Convert_OfAPowerThatIsNotWhole_TakesTheRoot()
        => Agree.Digits(14, Math.Sqrt(60), Unit.Parse("1/min^0.5").Convert(1, Unit.Parse("1/h^0.5")));

    [Fact]
    public void ConvertDifference_OfATemperature_LeavesTheZeroPointAlone()
        => Assert.Equal(0.5, Unit.Parse("degC").ConvertDifference(0.5, Unit.Parse("K")));

    [Theory]
    [InlineData("mg/L", "mg/kg")]
    [InlineData("mg/L", "mmol/L")]
    [InlineData("a.u.", "counts")]
    [InlineData("a.u.", "1")]
    [InlineData("counts", "1")]
    [InlineData("wt%", "at%")]
    [InlineData("deg", "1")]
    public void Convert_BetweenDifferentThings_Throws(string from, string to)
        => Assert.Throws<ArgumentException>(() => Unit.Parse(from).Convert(1, Unit.Parse(to)));

    [Fact]
    public void Product_OfUnits_JoinsWhatTheyShare()
    {
        Assert.Equal("mg/g", (Unit.Parse("mg/L") * Unit.Parse("L/g")).Plain);
        Assert.Equal("1/min", (Unit.Parse("mg/(g min)") / Unit.Parse("mg/g")).Plain);
        Assert.Equal("1", (Unit.Parse("mg/L") / Unit.Parse("mg/L")).Plain);
        Assert.Equal("mg2/L2", Unit.Parse("mg/L").Pow(2).Plain);
    }

    [Fact]
    public void Runs_OfAUnit_RaiseThePowersWithATrueMinus()
    {
        Assert.Equal([new TextRun("mg\u00A0L"), new TextRun("\u22121", Raised: true)], Unit.Parse("mg/L").Runs);
        Assert.Equal("µg/mL", Unit.Parse("ug/mL").Pretty);
        Assert.Equal("", Unit.One.Pretty);
    }

    // Law: there and back again gives the value, for any pair of one dimension.
    [Fact]
    public void Convert_ThereAndBack_GivesTheValue()
    {
        string[][] families = [["mg/L", "ug/mL", "g/L", "ng/mL"], ["min", "h", "d", "s"], ["K", "degC"], ["J/mol", "kJ/mol", "kcal/mol"], ["cm3(STP)/g", "mmol/g"]];
        Gen.Select(Gen.Int[0, 4].Select(i => families[i]), Gen.Int[0, 3], Gen.Int[0, 3], Gen.Double[-1e6, 1e6]).Sample((family, i, j, value) =>
        {
            var from = Unit.Parse(family[i % family.Length]);
            var to = Unit.Parse(family[j % family.Length]);
            var back = to.Convert(from.Convert(value, to), from);
            return Math.Abs(back - value) <= 4e-16 * Math.Max(Math.Abs(value), 300);
        });
    }

    // Law: order of multiplication does not matter to size and dimension.
    [Fact]
    public void Product_InAnyOrder_MeansTheSame()
    {
        var some = Gen.Int[0, 6].Select(i => Unit.Parse(new[] { "mg/L", "L/g", "1/min", "mmol/g", "kJ/mol", "m2/g", "min^0.5" }[i]));
        Gen.Select(some, some).Sample((a, b) => (a * b).HasSameScale(b * a) && (a * b / b).HasSameScale(a));
    }
}
