using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

internal static partial class AnOrder
{
    /// <summary>At night: Tove raised it and writes down what Ines says on the telephone and Olaf on shift.</summary>
    public static async Task<string> Consented(Scene scene)
    {
        var method = await Emergency.Listed(scene);
        var number = await Requested(scene);
        await scene.Tove.Consent(
            number,
            Emergency.Spoken(method, scene.IdOf("ines"), ConsentCapacity.EngineerOnCall, scene.Clock.Now)
        );
        await scene.Tove.Consent(
            number,
            Emergency.Spoken(method, scene.IdOf("olaf"), ConsentCapacity.OperationsInCharge, scene.Clock.Now)
        );
        return number;
    }
}
