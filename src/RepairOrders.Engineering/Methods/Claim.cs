namespace RepairOrders.Engineering.Methods;

/// <summary>What a method says of this pipe, defect and service.</summary>
/// <param name="Method">The method's code.</param>
/// <param name="Name">The method's name.</param>
/// <param name="Findings">Every limit tested, passed ones too; limits that could not be tested are findings of their own.</param>
public sealed record Claim(string Method, string Name, IReadOnlyList<Finding> Findings)
{
    /// <summary>Inside all its limits.</summary>
    public bool Inside => Findings.All(f => f.Severity != Severity.Fail);

    /// <summary>Outside a limit that nobody may sign past.</summary>
    public bool Barred => Findings.Any(f => f.Blocks);
}
