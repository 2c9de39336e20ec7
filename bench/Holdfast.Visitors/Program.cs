using System.Globalization;
using Holdfast.Visitors;

// Real browsers on the bench, with the invented study:
//   dotnet run -c Release --project bench/Holdfast.Visitors -- sessions [how many] [seconds]
//   dotnet run -c Release --project bench/Holdfast.Visitors -- pages
// A session that loses an edit, or an edit that is not in the Daybook at the end, ends it with exit code 1.
var numbers = args.Skip(1).Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToArray();
await using var bench = await ServedStudy.Start();
return args.FirstOrDefault() switch
{
    "sessions" => await Sessions.Run(bench, numbers.ElementAtOrDefault(0) is > 0 and var many ? many : 50, numbers.ElementAtOrDefault(1) is > 0 and var seconds ? seconds : 120),
    "pages" => await Pages.Run(bench),
    _ => Say(),
};

static int Say()
{
    Console.Error.WriteLine("Say \"sessions [how many] [seconds]\" or \"pages\".");
    return 2;
}
