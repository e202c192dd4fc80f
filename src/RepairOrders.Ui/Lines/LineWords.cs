using RepairOrders.Contract;

namespace RepairOrders.Ui.Lines;

/// <summary>What a line's data say in words.</summary>
internal static class LineWords
{
    /// <summary>What somebody at the pipe has to mind; nothing where there is nothing.</summary>
    public static string? Mind(LineDetails line)
    {
        List<string> words = [];
        if (line.SafetyCritical)
            words.Add("safety-critical");
        if (line.Toxic)
            words.Add("toxic");
        if (line.Flammable)
            words.Add("flammable");
        if (line.ServiceCategory == ServiceCategory.M)
            words.Add("category M");
        if (line.Potable)
            words.Add("drinking water");
        return words.Count == 0 ? null : string.Join(", ", words);
    }
}
