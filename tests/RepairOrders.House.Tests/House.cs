namespace RepairOrders.House.Tests;

/// <summary>Where the repository is.</summary>
internal static class House
{
    public static string Root
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "RepairOrders.sln")))
                folder =
                    folder.Parent ?? throw new InvalidOperationException("RepairOrders.sln is in no folder above.");
            return folder.FullName;
        }
    }

    public static string Under(params string[] path) => Path.Combine([Root, .. path]);
}
