using System.Diagnostics;

namespace RepairOrders.Api.Tests.Papers;

/// <summary>A PDF as a person meets it: its text, and its pages as pictures, by poppler.</summary>
internal static class Pages
{
    /// <summary>The text in reading order of the page.</summary>
    public static Task<string> Text(byte[] pdf) => Run("pdftotext", "-layout", pdf, "-", null);

    /// <summary>The pages as grey pictures, one after the other, as bytes.</summary>
    public static async Task<byte[]> Picture(byte[] pdf, int dpi = 60)
    {
        var folder = Directory.CreateTempSubdirectory("papers");
        try
        {
            await Run("pdftoppm", $"-gray -r {dpi}", pdf, Path.Combine(folder.FullName, "page"), folder.FullName);
            List<byte> all = [];
            foreach (var file in folder.EnumerateFiles("page*").OrderBy(f => f.Name))
                all.AddRange(await File.ReadAllBytesAsync(file.FullName));
            return [.. all];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Writes a paper where <c>LOOK</c> names a folder, so that a person can look at it.</summary>
    public static void Show(byte[] pdf, string name)
    {
        if (Environment.GetEnvironmentVariable("LOOK") is { Length: > 0 } folder)
            File.WriteAllBytes(Path.Combine(folder, name + ".pdf"), pdf);
    }

    private static async Task<string> Run(string tool, string options, byte[] pdf, string to, string? folder)
    {
        var file = Path.Combine(folder ?? Path.GetTempPath(), Guid.NewGuid().ToString("N") + ".pdf");
        await File.WriteAllBytesAsync(file, pdf);
        try
        {
            using var process = Process.Start(
                new ProcessStartInfo(tool, $"{options} {file} {to}") { RedirectStandardOutput = true }
            )!;
            var output = await process.StandardOutput.ReadToEndAsync();
            await process.WaitForExitAsync();
            process.ExitCode.ShouldBe(0, tool);
            return output;
        }
        finally
        {
            File.Delete(file);
        }
    }
}
