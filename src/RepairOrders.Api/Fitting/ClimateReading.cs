using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Surface;
using UnitsNet;

namespace RepairOrders.Api.Fitting;

/// <summary>Air, humidity and steel at the pipe, with go or no-go for each material issued.</summary>
internal sealed class ClimateReading : SignedRecord<SignedClimate>
{
    /// <summary>A reading speaks for this long; a mix is started on a fresh one.</summary>
    public static readonly TimeSpan GoodFor = TimeSpan.FromHours(1);

    private ClimateReading() { }

    public ClimateReading(SignedClimate body)
        : base(body) { }

    public override string Kind => "climate-reading";

    public override string Summary =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"steel {Asked.Ask.Steel.Entered}, dew point {Asked.DewPointC:0.0} °C, margin {Asked.MarginK:0.0} K, {Asked.Ask.HumidityPercent:0} %: {(Asked.Verdicts.All(v => v.Go) ? "go" : "no-go")}"
        );

    public override Tone Tone => Asked.Verdicts.All(v => v.Go) ? Tone.Go : Tone.Stop;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(
            order,
            "A climate reading",
            Stage.Approved,
            Stage.Consented,
            Stage.Issued,
            Stage.Ready,
            Stage.Fitting,
            Stage.Fitted
        ) ?? Authority.Objection(by, order, at);

    /// <summary>The last reading, while it is fresh.</summary>
    public static ClimateReading? Fresh(RepairOrder order, DateTimeOffset at) =>
        order.Last<ClimateReading>() is { } last && at - last.At <= GoodFor ? last : null;

    /// <summary>What stands against using a material in the climate of the last reading.</summary>
    public static Objection? Objection(RepairOrder order, StockItem material, DateTimeOffset at)
    {
        if (Fresh(order, at) is not { } reading)
            return NotRead();
        var failed = Judge(reading.Asked.Ask, material.Limits)
            .Findings.FirstOrDefault(f => f.Severity == Severity.Fail);
        return failed is null ? null : NoGo(material.Words, failed.Words);
    }

    public static Objection NotRead() =>
        new Objection(
            "climate-not-read",
            "No climate was read in the last hour. Read air, humidity and steel at the pipe now.",
            "technician"
        );

    public static Objection NoGo(string material, string why) =>
        new Objection(
            "climate-no-go",
            $"No-go for {material}. {why}",
            "technician, by warming, drying or waiting and reading again; integrity engineer, with another material"
        );

    public static SignedClimate Sign(RecordClimate ask, IReadOnlyList<StockItem> materials)
    {
        var dry = Judge(ask, null);
        var verdicts = materials.Select(m => Verdict(m.Code, m.Words, Judge(ask, m.Limits))).ToList();
        return new(
            ask,
            dry.Result.Condensation.DegreesCelsius,
            dry.Result.Margin.Kelvins,
            dry.Result.LeastSteel.DegreesCelsius,
            verdicts.Count > 0 ? verdicts : [Verdict("", "a material that needs dry steel", dry)]
        );
    }

    private static ClimateVerdictView Verdict(string item, string words, Calculated<ClimateVerdict> judged) =>
        new(item, words, judged.Result.Go, [.. judged.Findings.Select(f => f.View())]);

    // Without a material's limits only the steel's dryness is judged.
    private static Calculated<ClimateVerdict> Judge(RecordClimate ask, MaterialLimits? limits) =>
        SurfaceClimate.Judge(
            new(
                Temperature.FromDegreesCelsius(ask.Air.Value),
                RelativeHumidity.FromPercent(ask.HumidityPercent),
                Temperature.FromDegreesCelsius(ask.Steel.Value)
            ),
            new(
                Temperature.FromDegreesCelsius(limits?.LeastTemperature.Value ?? -60),
                Temperature.FromDegreesCelsius(limits?.GreatestTemperature.Value ?? 300),
                limits?.ForWetSurfaces ?? false
            )
        );
}
