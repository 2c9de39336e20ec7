using System.Globalization;
using System.Text;
using QRCoder;

namespace Holdfast.Web.Live;

/// <summary>The code of a vial as a QR code (ISO/IEC 18004), drawn as one path of squares.</summary>
/// <param name="Size">Modules on a side, the quiet zone included.</param>
/// <param name="Path">SVG path of the dark modules, one unit a module.</param>
internal sealed record LabelCode(int Size, string Path)
{
    /// <summary>Draws a code.</summary>
    /// <param name="code">The text, as it stands on the label.</param>
    public static LabelCode Of(string code)
    {
        // Level M bears a smudge over a seventh of the code.
        using var data = QRCodeGenerator.GenerateQrCode(code, QRCodeGenerator.ECCLevel.M);
        var path = new StringBuilder();
        for (var y = 0; y < data.ModuleMatrix.Count; y++)
        {
            for (var x = 0; x < data.ModuleMatrix[y].Count; x++)
            {
                if (data.ModuleMatrix[y][x])
                    path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
            }
        }

        return new(data.ModuleMatrix.Count, path.ToString());
    }
}
