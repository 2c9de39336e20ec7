using System.Buffers.Binary;
using System.Text.Json;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Statistics;
using Holdfast.Techniques.Micrographs;
using SkiaSharp;

namespace Holdfast.Techniques.Tests.Micrographs;

/// <summary>Pictures are opened to the very sample in every form, and what is no picture is refused in words before anything is set aside for it.</summary>
public class PictureTests
{
    /// <summary>Byte order, bits, samples, compression, differences: every combination.</summary>
    public static TheoryData<bool, int, int, int, bool> Forms()
    {
        var forms = new TheoryData<bool, int, int, int, bool>();
        for (var i = 0; i < 64; i++)
            forms.Add((i & 1) != 0, (i & 2) != 0 ? 16 : 8, (i & 4) != 0 ? 3 : 1, new[] { 1, 5, 8, 32773 }[(i >> 3) & 3], (i & 32) != 0);
        return forms;
    }

    [Theory, MemberData(nameof(Forms))]
    public void Tiff_InEveryForm_IsReadToTheSample(bool big, int bits, int samples, int compression, bool difference)
    {
        // 160 × 70 samples pass through every width of code of LZW.
        var made = new MadeTiff(160, 70) { IsBig = big, Bits = bits, Samples = samples, Photometric = samples == 3 ? 2 : 1, Compression = compression, IsDifference = difference, RowsPerStrip = 32 };
        var picture = Picture.Of(made.Write(), 0, "made.tif");
        Assert.Equal((160, 70), (picture.Width, picture.Height));
        for (var y = 0; y < 70; y += 3)
        {
            for (var x = 0; x < 160; x += 3)
            {
                var sample = MadeTiff.Sample(x, y, 0, bits);
                if (bits == 8)
                    Assert.Equal(sample, picture.At(x, y));
            }
        }

        // 16 bits are stretched: what is darker stays darker.
        if (bits == 16)
        {
            var pairs = Enumerable.Range(0, 159).Select(x => (Truth: MadeTiff.Sample(x + 1, 5, 0, 16) - MadeTiff.Sample(x, 5, 0, 16), Shown: picture.At(x + 1, 5) - picture.At(x, 5)));
            Assert.All(pairs, p => Assert.True(Math.Sign(p.Truth) * p.Shown >= 0));
            Assert.True(picture.At(0, 0) < 3);
        }
    }

    [Theory]
    [InlineData("s1-rods-parent", 0), InlineData("s2-rods-doped-same", 0), InlineData("s3-spheres-bar-wrong", 0), InlineData("s4-agglomerates", 0), InlineData("s5-plates-two-pages", 1)]
    public void DrawnPicture_Opened_HasItsSizePageAndBar(string id, int page)
    {
        var (name, bytes) = DrawnPictures.Of(id);
        var (image, bar) = (DrawnPictures.Truth(id).GetProperty("image"), DrawnPictures.Truth(id).GetProperty("scale_bar"));
        var head = PictureHead.Of(bytes, name);
        Assert.Equal(page, head.Main);
        var picture = Picture.Of(bytes, head.Main, name);
        Assert.Equal((image.GetProperty("width_px").GetInt32(), image.GetProperty("height_px").GetInt32(), image.GetProperty("bits").GetInt32()), (picture.Width, picture.Height, head.Pages[head.Main].Bits));
        int from = bar.GetProperty("x0_px").GetInt32(), to = bar.GetProperty("x1_px").GetInt32(), y = bar.GetProperty("y0_px").GetInt32();
        Assert.True(picture.At(from + 1, y) > 200 && picture.At(to - 2, y) > 200, "the bar is white");
        Assert.True(picture.At(from - 4, y) < 60 && picture.At(to + 4, y) < 60, "the strip beside it is dark");

        // A 12-bit picture in 16 bits is not shown black.
        Assert.InRange(Enumerable.Range(0, 500).Average(x => picture.At(x, 300)), 30, 220);
        Assert.NotNull(picture.Piece(0, 0, 0));
        Assert.NotNull(picture.Piece(picture.Levels - 1, 0, 0));
        Assert.Null(picture.Piece(0, 9, 0));
        Assert.Null(picture.Piece(picture.Levels, 0, 0));
    }

    [Fact]
    public void Resolution_OfAFile_IsOfTheSampleOrOfPrint()
    {
        Assert.Equal(2.5, PictureHead.Of(new MadeTiff(8, 8) { PerCentimetre = 4_000_000 }.Write(), "a.tif").Pages[0].Stated!.Nanometres, 9);
        Assert.True(PictureHead.Of(new MadeTiff(8, 8) { PerCentimetre = 28 }.Write(), "a.tif").Pages[0].Stated!.IsOfPrint);
        Assert.False(new StatedPixel(PictureHead.LargestPixel, "").IsOfPrint);
        Assert.True(new StatedPixel(PictureHead.LargestPixel + 1, "").IsOfPrint);
        var (name, bytes) = DrawnPictures.Of("s4-agglomerates");
        Assert.Equal((true, 264_583.3), (PictureHead.Of(bytes, name).Pages[0].Stated!.IsOfPrint, Math.Round(PictureHead.Of(bytes, name).Pages[0].Stated!.Nanometres, 1)));
        Assert.Equal(2.5, PictureHead.Of(DrawnPictures.Of("s3-spheres-bar-wrong").Bytes, name).Pages[0].Stated!.Nanometres, 6);
    }

    [Theory]
    [InlineData("tiles", "tiles"), InlineData("method", "method 7"), InlineData("bits", "bits"), InlineData("giant", "million"), InlineData("claims", "holds only"), InlineData("short", "cut short"), InlineData("none", "width or height is 0")]
    public void Tiff_ThatCannotBe_IsRefusedInWords(string what, string said)
    {
        byte[] bytes = what switch
        {
            "tiles" => new MadeTiff(16, 16) { Over = { [322] = 16 } }.Write(),
            "method" => new MadeTiff(16, 16) { Over = { [259] = 7 } }.Write(),
            "bits" => new MadeTiff(16, 16) { Over = { [258] = 12 } }.Write(),
            "giant" => new MadeTiff(16, 16) { Over = { [256] = 60_000, [257] = 60_000 } }.Write(),
            "claims" => new MadeTiff(16, 16) { RowsPerStrip = 16, Over = { [256] = 9_000, [257] = 9_000, [278] = 9_000 } }.Write(),
            "none" => new MadeTiff(16, 16) { Over = { [256] = 0 } }.Write(),
            _ => new MadeTiff(64, 64).Write()[..2000],
        };
        var refusal = Assert.Throws<StudyException>(() => PictureHead.Of(bytes, "odd.tif"));
        Assert.Contains(said, refusal.Message, StringComparison.Ordinal);
        Assert.Contains("odd.tif", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Limit_OfPixels_IsKeptOnBothSides()
    {
        var page = new PicturePage(1 << 14, 1 << 13, 8, 1, null) { Packed = PictureHead.MostPixels, MostPerByte = 1 };
        page.Require("a.tif");
        (page with { Width = PictureHead.LongestSide, Height = 1 }).Require("a.tif");
        Assert.Throws<StudyException>(() => (page with { Width = PictureHead.LongestSide + 1, Height = 1 }).Require("a.tif"));
        Assert.Throws<StudyException>(() => (page with { Height = (1 << 13) + 1, Packed = long.MaxValue }).Require("a.tif"));
        Assert.Throws<StudyException>(() => (page with { Packed = PictureHead.MostPixels - 1 }).Require("a.tif"));
    }

    // Headers with bytes changed at random: each is opened or refused in words, in little memory. The seed is fixed.
    [Theory, InlineData("TIFF", 12_000), InlineData("PNG", 6_000), InlineData("JPEG", 6_000)]
    public void Headers_ChangedAtRandom_AreOpenedOrRefused(string format, int count)
    {
        byte[][] good = format switch
        {
            "TIFF" =>
            [
                .. new[] { 1, 5, 8, 32773 }.SelectMany(c => new[] { 8, 16 }.Select(b => new MadeTiff(24, 16) { Compression = c, Bits = b, IsBig = b == 16, PerCentimetre = 4_000_000, IsDifference = c == 5 }.Write())),
                new MadeTiff(24, 16) { Samples = 3, Photometric = 2 }.Write(),
            ],
            "PNG" => [Encoded(SKEncodedImageFormat.Png, SKColorType.Gray8), Encoded(SKEncodedImageFormat.Png, SKColorType.Rgba8888)],
            _ => [Encoded(SKEncodedImageFormat.Jpeg, SKColorType.Gray8), Encoded(SKEncodedImageFormat.Jpeg, SKColorType.Rgba8888)],
        };
        var random = new SeededStream(20251126, "changed headers of " + format);
        var (opened, refused, most, longest) = (0, 0, 0L, TimeSpan.Zero);
        for (var i = 0; i < count; i++)
        {
            var bytes = good[random.Below(good.Length)].ToArray();
            var changes = 1 + random.Below(4);
            for (var c = 0; c < changes; c++)
            {
                // Where the header is: the end of a small TIFF, the beginning of the others.
                var at = format == "TIFF" ? random.Below(4) == 0 ? random.Below(8) : bytes.Length - 1 - random.Below(Math.Min(bytes.Length, 220)) : random.Below(Math.Min(bytes.Length, 200));
                bytes[at] = random.Below(3) == 0 ? byte.MaxValue : (byte)random.Below(256);
            }

            // A PNG with a wrong check sum goes no further: every second one is made right again.
            if (format == "PNG" && i % 2 == 0)
                RightSums(bytes);
            if (random.Below(8) == 0)
                bytes = bytes[..random.Below(bytes.Length)];
            long before = GC.GetAllocatedBytesForCurrentThread(), started = TimeProvider.System.GetTimestamp();
            try
            {
                var head = PictureHead.Of(bytes, "changed");
                _ = Picture.Of(bytes, head.Main, "changed").Piece(0, 0, 0);
                opened++;
            }
            catch (StudyException e)
            {
                Assert.Contains("changed", e.Message, StringComparison.Ordinal);
                refused++;
            }

            most = Math.Max(most, GC.GetAllocatedBytesForCurrentThread() - before);
            var took = TimeProvider.System.GetElapsedTime(started);
            longest = took > longest ? took : longest;
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{format}: {count} changed, {opened} opened, {refused} refused, at most {most >> 10} kB set aside, at most {longest.TotalMilliseconds:0} ms.");
        Assert.Equal(count, opened + refused);
        Assert.True(opened > count / 50 && refused > count / 50, $"{opened} opened, {refused} refused");
        Assert.InRange(most, 0, 64L << 20);
        Assert.True(longest < TimeSpan.FromSeconds(5), $"{longest}");
    }

    // 73 million pixels, with the bar and the rods where the README of the drawn pictures has them; drawn here, since the collection keeps only the numbers.
    [Fact]
    public void LargePicture_DrawnOnDemand_IsCutIntoPieces()
    {
        var truth = DrawnPictures.Truth("s6-large-on-demand");
        int width = truth.GetProperty("image").GetProperty("width_px").GetInt32(), height = truth.GetProperty("image").GetProperty("height_px").GetInt32();
        var bytes = Large(truth, width, height);
        Assert.True(bytes.Length > Limits.File);
        var head = PictureHead.Of(bytes, "large-05.tif");
        Assert.Equal(0.6, head.Pages[0].Stated!.Nanometres, 4);
        long before = GC.GetAllocatedBytesForCurrentThread(), started = TimeProvider.System.GetTimestamp();
        var picture = Picture.Of(bytes, 0, "large-05.tif");
        var opened = TimeProvider.System.GetElapsedTime(started);
        var aside = GC.GetAllocatedBytesForCurrentThread() - before;
        started = TimeProvider.System.GetTimestamp();
        for (var level = 0; level < picture.Levels; level++)
            Assert.InRange(picture.Piece(level, 0, 0)!.Length, 100, 400_000);
        var pieces = TimeProvider.System.GetElapsedTime(started);
        TestContext.Current.TestOutputHelper?.WriteLine($"{width} × {height}: opened in {opened.TotalMilliseconds:0} ms with {aside >> 20} MB, {picture.Bytes >> 20} MB kept, {picture.Levels} sizes, a piece of each in {pieces.TotalMilliseconds:0} ms.");
        Assert.Equal((width, height), (picture.Width, picture.Height));
        Assert.InRange(picture.Bytes, (long)width * height, (long)width * height * 14 / 10);
        Assert.InRange(aside, 0, 2L * width * height);
        Assert.Equal(byte.MaxValue, picture.At(truth.GetProperty("scale_bar").GetProperty("x0_px").GetInt32() + 1, truth.GetProperty("scale_bar").GetProperty("y0_px").GetInt32() + 1));
        var understood = Reading.Of("large-05.tif", bytes);
        Assert.Equal("large", Assert.Single(understood.Measurements()).Sample);
    }

    private static byte[] Large(JsonElement truth, int width, int height)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Gray8, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(70, 70, 70));
        using var paint = new SKPaint { Color = new SKColor(170, 170, 170), IsAntialias = true };
        var perPixel = (float)truth.GetProperty("nm_per_px_true").GetDouble();
        foreach (var rod in truth.GetProperty("particles").EnumerateArray().Where(p => p.TryGetProperty("polygon_nm", out _)))
        {
            using var path = new SKPath();
            path.AddPoly([.. rod.GetProperty("polygon_nm").EnumerateArray().Select(p => new SKPoint((float)p[0].GetDouble() / perPixel, (float)p[1].GetDouble() / perPixel))]);
            canvas.DrawPath(path, paint);
        }

        var bar = truth.GetProperty("scale_bar");
        paint.Color = SKColors.White;
        canvas.DrawRect(new SKRect(bar.GetProperty("x0_px").GetInt32(), bar.GetProperty("y0_px").GetInt32(), bar.GetProperty("x1_px").GetInt32(), bar.GetProperty("y1_px").GetInt32()), paint);
        canvas.Flush();
        var header = new MadeTiff(width, 1) { RowsPerStrip = 1, PerCentimetre = 16_666_667, Over = { [257] = (uint)height, [278] = (uint)height, [279] = (uint)(width * height) } }.Write();

        // The directory of the small file, moved behind the pixels of the large one.
        var from = (int)BinaryPrimitives.ReadUInt32LittleEndian(header.AsSpan(4));
        var to = 8 + width * height;
        var bytes = new byte[to + header.Length - from];
        header.AsSpan(0, 8).CopyTo(bytes);
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(4), (uint)to);
        for (var y = 0; y < height; y++)
            bitmap.GetPixelSpan().Slice(y * bitmap.RowBytes, width).CopyTo(bytes.AsSpan(8 + y * width));
        header.AsSpan(from).CopyTo(bytes.AsSpan(to));
        for (var tag = to + 2; tag + 12 <= bytes.Length && BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(tag)) is > 0 and < 1000 and var name; tag += 12)
        {
            if (name is 282 or 283)
                BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(tag + 8), BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(tag + 8)) + (uint)(to - from));
        }

        return bytes;
    }

    [Fact]
    public void File_OfAKind_MayBeAsLargeAsThatKind()
    {
        Assert.Equal(Limits.Picture, FileReaders.Largest(new MadeTiff(8, 8).Write()[..FileReaders.Head]));
        Assert.Equal(Limits.File, FileReaders.Largest([.. "mass,volume\n1,2"u8]));
    }

    // The check sum of each chunk anew (CRC-32 of ISO/IEC 15948, annex D; from memory).
    private static void RightSums(byte[] png)
    {
        for (var at = 8; at + 12 <= png.Length;)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at));
            if (at + 12L + length > png.Length)
                return;
            var sum = uint.MaxValue;
            foreach (var b in png.AsSpan(at + 4, 4 + (int)length))
            {
                sum ^= b;
                for (var bit = 0; bit < 8; bit++)
                    sum = (sum & 1) != 0 ? (sum >> 1) ^ 0xEDB88320 : sum >> 1;
            }

            BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(at + 8 + (int)length), ~sum);
            at += 12 + (int)length;
        }
    }

    private static byte[] Encoded(SKEncodedImageFormat format, SKColorType colour)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(48, 40, colour, SKAlphaType.Opaque));
        for (var i = 0; i < 48 * 40; i++)
            bitmap.SetPixel(i % 48, i / 48, new SKColor((byte)(i * 3 % 256), (byte)(i * 3 % 256), (byte)((colour == SKColorType.Gray8 ? i * 3 : i) % 256)));
        using var data = bitmap.Encode(format, 90);
        return data.ToArray();
    }
}
