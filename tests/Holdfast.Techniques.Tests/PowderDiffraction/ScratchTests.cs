using Holdfast.Diffraction;
using Holdfast.Testing;
using System.Text.Json;
namespace Holdfast.Techniques.Tests.PowderDiffraction;
public class ScratchTests
{
    [Fact]
    public void Show()
    {
        var o = new System.Text.StringBuilder();
        foreach (var (c, f) in new[] { ("s06-xy-sample-too-low", "sp4.xy"), ("s07-cobalt-with-background", "RT-1.csv"), ("s08-step-counted", "al9.dat") })
        {
            var u = Intake.Understand(f, File.ReadAllBytes(Repository.Verbatim("characterisation", "files", c, "files", f)));
            o.AppendLine($"== {c}: {u.Sentence}");
            foreach (var q in u.Questions) o.AppendLine($"  Q {q.Id} open={q.IsOpen}: {q.Text} [{string.Join("|", q.Choices)}]");
            foreach (var x in u.Findings) o.AppendLine($"  F {x.Code} {x.Sentence}");
            foreach (var t in u.Tables) { foreach (var k in t.Columns) o.AppendLine($"  C {k.Heading}: {k.Meaning} {k.Remark}"); o.AppendLine($"  {t.Rows} {string.Join("; ", t.Settings)}"); }
            if (u.Proposal?.Measurements is not { } ms) continue;
            foreach (var m in ms) o.AppendLine($"  M {m.Sample} {string.Join(" | ", m.Columns.Select(k => $"{k.Name} {k.Unit} {k.Numbers?.Length}"))} {string.Join("; ", m.Settings)}");
            var p = Intake.Found(u).Patterns[0];
            foreach (var l in p.Fit.Lines) o.AppendLine($"    {l.TwoTheta:0.0000} ± {l.TwoThetaU:0.0000} w {l.Width:0.000} h {l.Height:0} z {l.Significance:0} chi {l.ReducedChiSquare:0.0} {l.Flags}");
            foreach (var i in p.Cubic) o.AppendLine($"    cubic {i.Lattice} {i.A} N {string.Join(",", i.N)} missing {string.Join(",", i.Missing)}");
            if (p.Lattice is { } la) o.AppendLine("    " + string.Join("; ", la.Parameters) + " " + la.Displacement(p.Radius ?? 240));
            var given = JsonDocument.Parse(File.ReadAllText(Repository.Verbatim("characterisation", "files", c, "case.json"))).RootElement.GetProperty("given");
            double[] ce = [.. given.GetProperty("cell").EnumerateArray().Select(e => e.GetDouble())];
            var match = Holdfast.Techniques.PowderDiffraction.DiffractionStudy.With(p, new(ce[0], ce[1], ce[2], ce[3], ce[4], ce[5]), given.GetProperty("hkl").EnumerateArray().Select(h => new Miller(h[0].GetInt32(), h[1].GetInt32(), h[2].GetInt32())));
            o.AppendLine($"    given: matched {match.Matched.Length} unmatched {match.Unmatched.Length} limit {match.DetectionLimit} lattice {(match.Lattice is { } lb ? string.Join("; ", lb.Parameters) + lb.Displacement(240) : "none")}");
        }
        File.WriteAllText("/tmp/xrdtry/intake.txt", o.ToString());
    }
}
