using System.Globalization;

namespace Holdfast.Studies.Tests;

/// <summary>Runs something as it would run on a machine of another language.</summary>
internal static class In
{
    public static void Culture(string name, Action act)
    {
        var (culture, ui) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = new CultureInfo(name);
            act();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, ui);
        }
    }
}
