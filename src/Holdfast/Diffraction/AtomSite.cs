namespace Holdfast.Diffraction;

/// <summary>An atom of the asymmetric unit.</summary>
/// <param name="Label">Its name in the file: "O1".</param>
/// <param name="Element">Symbol without charge: "O".</param>
/// <param name="X">Share along a.</param>
/// <param name="Y">Share along b.</param>
/// <param name="Z">Share along c.</param>
/// <param name="Occupancy">How much of the site is filled, 0 to 1, without unit.</param>
/// <param name="B">Isotropic displacement parameter B = 8π²U, square ångström.</param>
public sealed record AtomSite(string Label, string Element, double X, double Y, double Z, double Occupancy, double B);
