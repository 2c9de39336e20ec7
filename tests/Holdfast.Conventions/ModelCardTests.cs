using System.Reflection;
using Holdfast.Fitting;

namespace Holdfast.Conventions;

/// <summary>Every curve has a card that says where the formula comes from and what each parameter means.</summary>
public class ModelCardTests
{
    /// <summary>Every curve there is.</summary>
    public static TheoryData<string> Curves => [.. Found.Keys.Order(StringComparer.Ordinal)];

    private static Dictionary<string, ModelCard> Found { get; } = Shipped.Science.GetExportedTypes()
        .Where(t => t.IsValueType && t.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(ICurve<>)))
        .ToDictionary(t => t.Name, t => (ModelCard)t.GetProperty("Card", BindingFlags.Public | BindingFlags.Static)!.GetValue(null)!);

    [Theory, MemberData(nameof(Curves))]
    public void Card_OfACurve_SaysNameFormulaSourceLimitsAndEveryParameter(string curve)
    {
        var card = Found[curve];
        Assert.All([card.Name, card.Formula, card.Source, card.Limits], words => Assert.True(words.Length > 3, $"{curve}: '{words}' says nothing."));
        Assert.InRange(card.Parameters.Count, 1, 4);
        foreach (var parameter in card.Parameters)
        {
            Assert.NotEmpty(parameter.Symbol);
            Assert.True(parameter.Meaning.Length > 5, $"{curve}, {parameter.Symbol}: '{parameter.Meaning}' says nothing.");
            Assert.True(parameter.Unit.Length > 0 || parameter.Kind is Kind.Exponent or Kind.Fraction or Kind.Other, $"{curve}, {parameter.Symbol} has no unit.");
            Assert.Contains(parameter.Symbol, card.Formula, StringComparison.Ordinal);
        }

        Assert.Equal(card.Parameters.Count, card.Parameters.Select(p => p.Symbol).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Cards_TheirNames_AreUnique()
    {
        Assert.True(Found.Count >= 15);
        Assert.Equal(Found.Count, Found.Values.Select(c => c.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }
}
