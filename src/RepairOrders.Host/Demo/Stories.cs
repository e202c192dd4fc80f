namespace RepairOrders.Host.Demo;

/// <summary>What happened at the mill in the last 400 days.</summary>
internal static partial class Stories
{
    public static Task Tell(Crew crew, Walk walk)
    {
        Story[] all = [.. Ended, .. InService, .. Troubled, .. AtWork, .. Waiting];
        return walk.Run([
            () => MillStock.Keep(crew, walk),
            () => Mill.Plan(crew, walk),
            .. all.Select((story, place) => (Func<Task>)(() => story.Tell(crew, walk, place))),
        ]);
    }
}
