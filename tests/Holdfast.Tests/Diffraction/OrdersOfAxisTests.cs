using Holdfast.Diffraction;

namespace Holdfast.Tests.Diffraction;

/// <summary>The axis of an invented layered powder from its own orders: exact places of 00l with a displaced sample, worked by Bragg's law alone.</summary>
public class OrdersOfAxisTests
{
    private const double Wavelength = 1.540593, Displacement = 0.05;

    private static readonly UnitCell Near = new(3.06, 3.06, 22.9, 90, 90, 120);

    [Fact]
    public void Orders_OfOneAxis_GiveItAndNoOther()
    {
        var axis = OrdersOfAxis.Of([.. new[] { 3, 6, 9, 12 }.Select(l => Line(new(0, 0, l), 22.86 / l))], Near, Wavelength)!;
        Assert.Equal(("c", "00l", "a"), (axis.Axis.Symbol, axis.Planes, axis.Free));
        Assert.Equal(22.86, axis.Axis.Value, 2e-3);
        Assert.Equal(Place(22.86 / 15), axis.At(new(0, 0, 15), Wavelength)!.Value, 0.02);
        Assert.Null(axis.At(new(1, 1, 0), Wavelength));
        Assert.Null(Lattice.Of([.. new[] { 3, 6, 9, 12 }.Select(l => Line(new(0, 0, l), 22.86 / l))], CrystalSystem.Hexagonal, Near, Wavelength));
    }

    // a of a hexagonal cell is longer than d(100) by 2/√3.
    [Fact]
    public void Orders_OfTheShortAxis_AreLongerThanTheirSpacing()
        => Assert.Equal(10.4, OrdersOfAxis.Of([.. Enumerable.Range(1, 5).Select(h => Line(new(h, 0, 0), 10.4 * Math.Sqrt(3) / 2 / h))], new(10.5, 10.5, 5, 90, 90, 120), Wavelength)!.Axis.Value, 2e-3);

    [Fact]
    public void OtherPlanes_TooFewLinesOrFreeAngles_GiveNone()
    {
        IndexedLine[] lines = [.. new[] { 3, 6, 9, 12 }.Select(l => Line(new(0, 0, l), 22.86 / l))];
        Assert.Null(OrdersOfAxis.Of([.. lines, Line(new(1, 1, 0), 1.53)], Near, Wavelength));
        Assert.Null(OrdersOfAxis.Of(lines[..2], Near, Wavelength));
        Assert.Null(OrdersOfAxis.Of([], Near, Wavelength));
        Assert.Null(OrdersOfAxis.Of(lines, new(5, 6, 22.9, 90, 100, 90), Wavelength));
    }

    private static double Place(double spacing) => Bragg.TwoTheta(spacing, Wavelength)!.Value + Displacement * Math.Cos(Bragg.TwoTheta(spacing, Wavelength)!.Value * Math.PI / 360);

    private static IndexedLine Line(Miller planes, double spacing) => new(planes, Place(spacing), 0.005);
}
