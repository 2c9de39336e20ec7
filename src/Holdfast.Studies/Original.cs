namespace Holdfast.Studies;

/// <summary>A file taken in, kept byte for byte.</summary>
/// <param name="Sha256">Its fingerprint, lower-case hexadecimal; also its name under originals/.</param>
/// <param name="FileName">Its name when it was taken in.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Entry">History entry that took it in.</param>
/// <param name="When">When it was taken in.</param>
public sealed record Original(string Sha256, string FileName, long Bytes, long Entry, DateTimeOffset When);
