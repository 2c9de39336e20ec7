using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Claims.Tests;

/// <summary>A claim and a margin as typed into a form: refused in words beside the field, or ready to be kept.</summary>
public class StatementTests
{
    private static readonly Study Empty = new() { Title = "invented" };

    [Fact]
    public void Parameters_OfEveryRule_AreKnown()
    {
        foreach (var rule in Defence.Rules)
            Assert.Equal(ClaimParameter.Of(rule).Length, ClaimParameter.Of(rule).Select(p => p.Name).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Examples_OfEveryParameter_AreRead()
    {
        foreach (var rule in Defence.Rules)
        {
            var statement = Statement.Of(Empty, rule.Id, ClaimParameter.Of(rule).Select(p => KeyValuePair.Create(p.Name, p.Example)), null);
            Assert.Empty(statement.Refusals);
            Assert.Equal(rule.Id, statement.Stated!.Rule);
        }
    }

    [Theory]
    [InlineData("time", "", "time", "is missing")]
    [InlineData("time", "soon", "time", "cannot be read as the contact time")]
    [InlineData("time", "3 g", "time", "cannot be read as the contact time")]
    [InlineData("colour", "blue", "colour", "reads no colour")]
    public void Statement_WithAFieldThatCannotServe_SaysSoBesideIt(string name, string words, string field, string says)
    {
        var statement = Statement.Of(Empty, "equilibrium-reached", [KeyValuePair.Create(name, words)], null);
        Assert.Null(statement.Stated);
        Assert.Contains(statement.Refusals, r => r.Field == field && r.Sentence.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void Statement_OfAnUnknownRule_NamesTheRules()
        => Assert.Contains("equilibrium-reached", Assert.Single(Statement.Of(Empty, "levitation", [], null).Refusals).Sentence, StringComparison.Ordinal);

    [Fact]
    public void Id_TakenAlready_IsNumbered()
    {
        var first = Statement.Of(Empty, "capacity", [KeyValuePair.Create("capacity", "13.5 mg/g")], " ").Stated!;
        Assert.Null(first.Wording);
        var study = Fold.After(Empty, first, 2, DateTimeOffset.UnixEpoch, "Ada");
        Assert.Equal(first.Id + "-2", Statement.Of(study, "capacity", [KeyValuePair.Create("capacity", "13.5 mg/g")], null).Stated!.Id);
        Assert.Equal(first.Id, Statement.Of(study, "capacity", [KeyValuePair.Create("capacity", "14 mg/g")], null, first.Id).Stated!.Id);
    }

    [Theory]
    [InlineData("plateau", "−4", "4,5", -4, 4.5)]
    [InlineData("mass-balance", "85", "115", 85, 115)]
    public void Margin_AsTyped_IsRead(string name, string low, string high, double from, double to)
    {
        var (margin, refusal) = MarginKind.Read(name, low, high);
        Assert.Null(refusal);
        Assert.Equal((from, to, MarginKind.Named(name)!.Unit), (margin!.Low, margin.High, margin.Unit));
    }

    [Theory]
    [InlineData("plateau", "a", "4", "low")]
    [InlineData("plateau", "-4", "1,234", "high")]
    [InlineData("plateau", "4", "-4", "high")]
    [InlineData("weather", "1", "2", "margin")]
    public void Margin_ThatCannotServe_NamesTheField(string name, string low, string high, string field)
        => Assert.Equal(field, MarginKind.Read(name, low, high).Refusal!.Field);
}
