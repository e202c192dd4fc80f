using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>Temperatures on the pipe for the cure log, one or a logger's many; each with its time.</summary>
internal sealed class CureReading : SignedRecord<RecordCure>
{
    private CureReading() { }

    public CureReading(RecordCure ask)
        : base(ask) { }

    public override string Kind => "cure-reading";

    public override string Summary =>
        Asked.Readings.Count == 1
            ? $"pipe {Asked.Readings[0].Pipe.Entered}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{Asked.Readings.Count} readings, {Asked.Readings.Min(r => r.Pipe.Value):0.#} to {Asked.Readings.Max(r => r.Pipe.Value):0.#} °C"
            );

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "A cure reading", Stage.Fitting, Stage.Fitted, Stage.InService)
        ?? Authority.Objection(by, order, at);
}
