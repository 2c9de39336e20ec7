using Holdfast.Planning;
using Holdfast.Reports.Markup;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Holdfast.Web.Tests;

public class LabelCodeTests
{
    // Read back by a decoder of another house (ZXing.Net), from the drawn squares and not from the matrix they were made of.
    [Theory, InlineData("ISO-298", 147), InlineData("KIN", 1), InlineData("TEMP318", 9999)]
    public void Of_RunCode_IsReadBackByAnIndependentDecoder(string series, int counter)
    {
        var code = RunCode.Of(2026, series, counter);
        var label = SquareCode.Of(code);
        const int scale = 4;
        var side = label.Size * scale;
        var light = new byte[side * side];
        Array.Fill(light, (byte)255);
        foreach (var square in label.Path.Split('M', StringSplitOptions.RemoveEmptyEntries))
        {
            var place = square.Split('h')[0].Split(' ').Select(int.Parse).ToArray();
            for (var y = 0; y < scale; y++)
            {
                for (var x = 0; x < scale; x++)
                    light[(place[1] * scale + y) * side + place[0] * scale + x] = 0;
            }
        }

        var source = new RGBLuminanceSource(light, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        var read = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)));
        Assert.Equal(code, read?.Text);
        Assert.True(RunCode.IsValid(read!.Text));
    }
}
