using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Tests.StudyTables;

public class PreparationTablesTests
{
    // 1000 to 40 mg/L in 50 mL: 50/25 = 2.00 mL, by hand.
    [Fact]
    public void Dilution_ByHand_TakesTwoMillilitres()
    {
        var (table, trouble) = PreparationTables.Dilution("1000 mg/L", "40mg/L", "0.05 L");
        Assert.Null(trouble);
        Assert.Contains("take 2.00 mL with the 2 mL pipette, make up to 50 mL", ((TextCell)table!.Rows[0].Cells[0]).Text.Plain, StringComparison.Ordinal);
        Assert.Equal(2, ((NumberCell)table.Rows[0].Cells[2]).Value, 9);
        var made = (MeasuredCell)table.Rows[0].Cells[1];
        Assert.Equal(40, made.Value, 9);

        // u from 2 mL ± 0.010 mL and 50 mL ± 0.06 mL, triangular: 40·√((0.01/2)² + (0.06/50)²)/√6 = 0.0840 (ISO 648 and ISO 1042, class A).
        Assert.InRange(made.U, 0.06, 0.12);
    }

    // planning.md 6: nickel nitrate hexahydrate holds 20.18 % nickel; 0.25 L of 1000 mg/L take 0.25/0.2018 = 1.2387 g, at 99 % 1.2512 g.
    [Fact]
    public void Stock_ByHand_WeighsTheSaltForItsMetal()
    {
        var (table, _) = PreparationTables.Stock("Ni(NO3)2.6H2O", "Ni", "1 g/L", "250 mL", "99 %");
        Assert.Equal(1.2512, ((NumberCell)table!.Rows[0].Cells[1]).Value, 0.0003);
        Assert.Contains(table.Notes, n => n.Plain.Contains("nickel salt", StringComparison.Ordinal));
        Assert.DoesNotContain(table.Notes, n => n.Plain.Contains("spoils", StringComparison.Ordinal));
        Assert.Contains(PreparationTables.Stock("Ni(NO3)2.6H2O", "Ni", "100 mg/L", "50 mL", "99 %").Table!.Notes, n => n.Plain.Contains("spoils", StringComparison.Ordinal));
    }

    [Fact]
    public void Preparations_WhatCannotBeRead_IsAskedForInWords()
    {
        Assert.Contains("1000 mg/L", PreparationTables.Dilution("strong", "40 mg/L", "50 mL").Trouble, StringComparison.Ordinal);
        Assert.Contains("40 mg/L", PreparationTables.Dilution("1000 mg/L", "40", "50 mL").Trouble, StringComparison.Ordinal);
        Assert.Contains("50 mL", PreparationTables.Dilution("1000 mg/L", "40 mg/L", "-5 mL").Trouble, StringComparison.Ordinal);
        Assert.Contains("stronger", PreparationTables.Dilution("10 mg/L", "40 mg/L", "50 mL").Trouble, StringComparison.Ordinal);
        Assert.Contains("no formula", PreparationTables.Stock("salt", "Ni", "1 g/L", "1 L", "99 %").Trouble, StringComparison.Ordinal);
        Assert.Contains("holds no Pb", PreparationTables.Stock("NiCl2", "Pb", "1 g/L", "1 L", "99 %").Trouble, StringComparison.Ordinal);
        Assert.Contains("purity", PreparationTables.Stock("NiCl2", "Ni", "1 g/L", "1 L", "120 %").Trouble, StringComparison.Ordinal);
    }
}
