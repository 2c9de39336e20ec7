namespace Holdfast.Diffraction;

/// <summary>The seven kinds of unit cell, by what their lengths and angles have in common.</summary>
public enum CrystalSystem
{
    /// <summary>a = b = c, all angles 90°.</summary>
    Cubic,

    /// <summary>a = b, all angles 90°.</summary>
    Tetragonal,

    /// <summary>a = b, γ = 120°: hexagonal, and trigonal on hexagonal axes.</summary>
    Hexagonal,

    /// <summary>a = b = c, three equal angles: trigonal on rhombohedral axes.</summary>
    Rhombohedral,

    /// <summary>All angles 90°.</summary>
    Orthorhombic,

    /// <summary>α = γ = 90°, b the unique axis.</summary>
    Monoclinic,

    /// <summary>Nothing in common.</summary>
    Triclinic,
}
