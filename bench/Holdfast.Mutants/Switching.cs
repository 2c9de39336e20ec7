using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Holdfast.Mutants;

/// <summary>One single-point change of the source.</summary>
/// <param name="Number">Its number, from 1: the value of HOLDFAST_MUTANT that switches it on.</param>
/// <param name="File">The file, from the root of the repository.</param>
/// <param name="Line">The line, from 1.</param>
/// <param name="Change">What is changed into what.</param>
/// <param name="Constant">Name of the constant that is changed, or null.</param>
internal sealed record Mutant(int Number, string File, int Line, string Change, string? Constant);

/// <summary>
/// Rewrites a file so that each of its changes can be switched on at run time: one build serves all. A comparison takes or leaves its equal case, a sum becomes a difference and the other way
/// round, a number grows by a fifth or by one. An equal case that no data can give is left out. A constant becomes a property; where the language wants a constant the change is left out by the caller.
/// </summary>
/// <param name="file">The file, from the root of the repository.</param>
/// <param name="mutants">Receives the changes.</param>
/// <param name="leftOut">Lines on which nothing is changed.</param>
/// <param name="constants">Names that the language wants to be constants.</param>
internal sealed class Switching(string file, List<Mutant> mutants, IReadOnlySet<int> leftOut, IReadOnlySet<string> constants) : CSharpSyntaxRewriter
{
    private static readonly HashSet<string> Probabilities = ["P", "p", "PIncreasing", "PDecreasing", "PDiffersFrom", "LackOfFitP"];
    private static readonly HashSet<string> Slack = ["1e-9", "0.999", "1.001", "1.0001"];

    /// <summary>Names in the places of a file where only constants may stand: patterns, defaults of parameters, attributes, other constants.</summary>
    /// <param name="root">The file.</param>
    public static IEnumerable<string> WantedConstant(SyntaxNode root)
        => root.DescendantNodes()
            .Where(n => n is ConstantPatternSyntax or RelationalPatternSyntax or CaseSwitchLabelSyntax or AttributeSyntax or ParameterSyntax { Default: not null }
                || (n is FieldDeclarationSyntax field && field.Modifiers.Any(SyntaxKind.ConstKeyword)) || n is LocalDeclarationStatementSyntax { IsConst: true })
            .SelectMany(n => n.DescendantNodes().OfType<IdentifierNameSyntax>()).Select(i => i.Identifier.Text);

    /// <inheritdoc/>
    public override SyntaxNode? VisitFieldDeclaration(FieldDeclarationSyntax node)
    {
        var variable = node.Declaration.Variables[0];
        if (!node.Modifiers.Any(SyntaxKind.ConstKeyword) || node.Declaration.Variables.Count != 1 || constants.Contains(variable.Identifier.Text) || variable.Initializer?.Value is not LiteralExpressionSyntax literal || Changed(literal) is not { } change || IsLeftOut(literal))
            return node;
        var modifiers = node.Modifiers.Where(m => !m.IsKind(SyntaxKind.ConstKeyword)).Select(m => m.Text);
        var text = $"{string.Join(' ', modifiers)} static {node.Declaration.Type} {variable.Identifier} => {Either(literal, literal.ToString(), change, $"{variable.Identifier}: {literal} → {change}", variable.Identifier.Text)};";
        return SyntaxFactory.ParseMemberDeclaration(text)!.WithTriviaFrom(node);
    }

    /// <inheritdoc/>
    public override SyntaxNode? VisitBinaryExpression(BinaryExpressionSyntax node)
    {
        var other = node.OperatorToken.Text switch { "<" => "<=", "<=" => "<", ">" => ">=", ">=" => ">", "+" => "-", "-" => "+", _ => null };
        var inside = (BinaryExpressionSyntax)base.VisitBinaryExpression(node)!;
        if (other is null || IsLeftOut(node) || IsText(node) || (node.OperatorToken.Text[0] is '<' or '>' && HasNoEqualCase(node)))
            return inside;
        var either = Either(node, $"{inside.Left} {inside.OperatorToken.Text} {inside.Right}", $"{inside.Left} {other} {inside.Right}", $"{Short(node)}: {node.OperatorToken.Text} → {other}");
        return SyntaxFactory.ParseExpression(either).WithTriviaFrom(node);
    }

    /// <inheritdoc/>
    public override SyntaxNode? VisitLiteralExpression(LiteralExpressionSyntax node)
        => Changed(node) is { } change && !IsLeftOut(node) ? SyntaxFactory.ParseExpression(Either(node, node.ToString(), change, $"{node} → {change}")).WithTriviaFrom(node) : node;

    /// <inheritdoc/>
    public override SyntaxNode? VisitLocalDeclarationStatement(LocalDeclarationStatementSyntax node) => node.IsConst ? node : base.VisitLocalDeclarationStatement(node);

    // Patterns, attributes, defaults of parameters and indices from the end want constants.
    /// <inheritdoc/>
    public override SyntaxNode? VisitConstantPattern(ConstantPatternSyntax node) => node;

    /// <inheritdoc/>
    public override SyntaxNode? VisitRelationalPattern(RelationalPatternSyntax node) => node;

    /// <inheritdoc/>
    public override SyntaxNode? VisitAttributeList(AttributeListSyntax node) => node;

    /// <inheritdoc/>
    public override SyntaxNode? VisitParameter(ParameterSyntax node) => node;

    /// <inheritdoc/>
    public override SyntaxNode? VisitInterpolatedStringExpression(InterpolatedStringExpressionSyntax node) => node;

    private static string? Changed(LiteralExpressionSyntax literal)
        => !literal.IsKind(SyntaxKind.NumericLiteralExpression) ? null
            : literal.Token.Value switch
            {
                int n => (n + 1).ToString(CultureInfo.InvariantCulture),
                double d when d != 0 => (1.2 * d).ToString("R", CultureInfo.InvariantCulture) is var text && text.Contains('.', StringComparison.Ordinal) || text.Contains('E', StringComparison.Ordinal) ? text : text + ".0",
                _ => null,
            };

    private static bool IsText(BinaryExpressionSyntax node) => node.DescendantNodesAndSelf().Any(n => n is InterpolatedStringExpressionSyntax || n.IsKind(SyntaxKind.StringLiteralExpression));

    // No data give the equal case: a probability or an exponential worked out in floating point is no round limit to the last bit; and a comparison that carries a slack for rounding says itself that it is none.
    private static bool HasNoEqualCase(BinaryExpressionSyntax node)
        => IsProbability(node.Left) != IsProbability(node.Right)
            || node.DescendantNodes().Any(n => n is IdentifierNameSyntax { Identifier.Text: "Exp" } || (n is LiteralExpressionSyntax literal && Slack.Contains(literal.Token.Text)));

    private static bool IsProbability(ExpressionSyntax side) => side switch
    {
        InvocationExpressionSyntax call => IsProbability(call.Expression),
        MemberAccessExpressionSyntax member => Probabilities.Contains(member.Name.Identifier.Text),
        IdentifierNameSyntax name => Probabilities.Contains(name.Identifier.Text),
        _ => false,
    };

    private static string Short(SyntaxNode node) => node.ToString() is { Length: > 60 } text ? text[..57] + "…" : node.ToString();

    private static int LineOf(SyntaxNode node) => node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;

    private bool IsLeftOut(SyntaxNode node) => leftOut.Contains(LineOf(node)) || leftOut.Contains(node.GetLocation().GetLineSpan().EndLinePosition.Line + 1);

    // Both are worked out: so a run without any change tells which changes made a difference at all, and the others need no run of their own.
    private string Either(SyntaxNode node, string asIs, string changed, string change, string? constant = null)
    {
        mutants.Add(new(mutants.Count + 1, file, LineOf(node), change.ReplaceLineEndings(" "), constant));
        return $"global::Holdfast.MutantSwitch.Of({mutants.Count.ToString(CultureInfo.InvariantCulture)}, {asIs}, {changed})";
    }
}
