using Holdfast.Amounts;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Kinetics;

public class LangmuirKineticsTests
{
    // reference/sorption/langmuir-kinetics.csv: the rate law integrated numerically, independent of the closed form.
    [Fact]
    public void MixedOrder_OfLangmuirsRateLaw_AgreesWithIntegration()
    {
        foreach (var row in ReferenceTable.Read("sorption", "langmuir-kinetics.csv"))
        {
            double N(string column) => row.Number(column);
            var (qe, k, f2) = LangmuirKinetics.MixedOrder<Number>(N("C0_mg_L"), N("dose_g_L"), N("qm_mg_g"), N("K_L_mg"), N("ka_L_mg_min"));
            Agree.Relative(1e-9, N("qe"), qe.Value, "qe");
            Agree.Relative(1e-9, N("k_per_min"), k.Value, "k");
            Agree.Relative(1e-9, N("f2"), f2.Value, "f2");
            Agree.Relative(1e-9, N("coverage") * N("removal_fraction"), f2.Value, "f2 = coverage × removal");
            Agree.Relative(1e-9, N("q_by_integration"), MixedOrder.Value<Number>(N("t_min"), [qe, k, f2]).Value, "q");
        }
    }
}
