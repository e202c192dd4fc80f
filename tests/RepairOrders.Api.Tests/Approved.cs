namespace RepairOrders.Api.Tests;

/// <summary>Texts whose every change is seen in review. <c>APPROVE=1</c> in the environment rewrites the approved one.</summary>
internal static class Approved
{
    private static string Folder
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "RepairOrders.sln")))
                folder =
                    folder.Parent ?? throw new InvalidOperationException("RepairOrders.sln is in no folder above.");
            return Path.Combine(folder.FullName, "tests", "RepairOrders.Api.Tests");
        }
    }

    public static async Task ShouldBeApproved(this string text, string file)
    {
        var path = Path.Combine(Folder, file);
        var ours = text.ReplaceLineEndings("\n").TrimEnd() + "\n";
        if (Environment.GetEnvironmentVariable("APPROVE") == "1")
            await File.WriteAllTextAsync(path, ours);
        var approved = File.Exists(path) ? await File.ReadAllTextAsync(path) : "";
        if (approved == ours)
            return;
        var (old, now) = (approved.Split('\n'), ours.Split('\n'));
        var row = old.Zip(now).TakeWhile(rows => rows.First == rows.Second).Count();
        Assert.Fail(
            $"""
            {file} is not what was approved, from row {row + 1} on:
              approved: {old.ElementAtOrDefault(row)}
              now:      {now.ElementAtOrDefault(row)}
            If the change is meant: APPROVE=1 dotnet run --project tests/RepairOrders.Api.Tests -- --filter-class "*{Path.GetFileName(
                    file
                ).Split('.')[0]}*"
            and commit the file.
            """
        );
    }
}
