namespace RepairOrders.Host.Demo;

/// <summary>What happened at the mill in the last 400 days.</summary>
internal static class Stories
{
    public static Task Tell(Crew crew, Walk walk) => walk.Run([]);
}
