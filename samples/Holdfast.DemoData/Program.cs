namespace Holdfast.DemoData;

/// <summary>
/// Writes the invented demo study: <c>dotnet run --project samples/Holdfast.DemoData -- samples/demo</c>. The same bytes come out on
/// every run.
/// </summary>
public static class Program
{
    /// <summary>Writes every file into the named folder, or into samples/demo below the current folder.</summary>
    /// <param name="args">The folder, or nothing.</param>
    /// <returns>0 when done, 2 when the arguments were not understood.</returns>
    public static int Main(string[] args)
    {
        ArgumentNullException.ThrowIfNull(args);
        if (args.Length > 1)
        {
            Console.Error.WriteLine("usage: dotnet run --project samples/Holdfast.DemoData -- [FOLDER]");
            return 2;
        }

        var folder = args.Length == 1 ? args[0] : Path.Combine("samples", "demo");
        Directory.CreateDirectory(folder);
        foreach (var file in DemoFiles.Of(InventedStudy.FromSeed()))
        {
            File.WriteAllBytes(Path.Combine(folder, file.Name), file.Bytes);
            Console.WriteLine(file.Name);
        }

        // What borrowed instruments gave of the powders lies beside it: each technique reads its own.
        var powders = Path.TrimEndingDirectorySeparator(folder) + "-powder";
        Directory.CreateDirectory(powders);
        foreach (var file in PowderSheets.Of(InventedStudy.Seed))
        {
            File.WriteAllBytes(Path.Combine(powders, file.Name), file.Bytes);
            Console.WriteLine(Path.GetFileName(powders) + "/" + file.Name);
        }

        return 0;
    }
}
