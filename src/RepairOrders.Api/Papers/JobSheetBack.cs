using RepairOrders.Api.Drawing;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;
using static RepairOrders.Api.Papers.JobSheet;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Papers;

/// <summary>The back of the job sheet: what is signed and written down at the pipe.</summary>
internal static class JobSheetBack
{
    private const int MostFasteners = 16;
    private static readonly string[] Passes = ["1, half", "2, full", "3, full again"];

    public static void Write(Paper paper, OrderFacts facts)
    {
        using var trial = facts.Paper("Job sheet", paper.Size);
        trial.Next();
        var left = new Side(trial, facts, 0).Write();
        // What is left over is shared out among the boxes: a gloved hand writes large. Where it is tight they are a little lower.
        var boxes = (facts.Work?.Method.HoldPoints.Count ?? 0) + 10.0;
        var spare = trial.Press.Pages > 2 ? Tight : Math.Clamp((left - Notes) / boxes, Tight, MostSpare);
        new Side(paper, facts, spare).Write();
    }

    private const double Tight = -1;
    private const double Notes = 10;
    private const double MostSpare = 4.5;

    private sealed class Side(Paper paper, OrderFacts facts, double spare)
    {
        private readonly Recorded recorded = new(facts);

        /// <summary>Answers the room that is left for notes.</summary>
        public double Write()
        {
            HoldPoints();
            Cautioned(paper, "At the work", [.. LaterCautions(facts).Where(c => !AtTheTest(c))], 2, Paper.Small);
            Readings();
            Clocks();
            Test();
            return Signatures();
        }

        // Where the eye is when the pressure comes on.
        private static bool AtTheTest(string caution) =>
            caution.Contains("leak test", StringComparison.Ordinal)
            || caution.Contains("Fit the tag", StringComparison.Ordinal)
            || caution.Contains("keep to the limits", StringComparison.Ordinal);

        // Letter is shorter; a line of handwriting still fits.
        private double Cell => (paper.PageHeight > 290 ? 7.8 : 6.5) + spare;

        private void HoldPoints()
        {
            var points = facts.Work?.Method.HoldPoints ?? [];
            paper.Heading("Hold points: do not pass unsigned (H hold, W call the witness)");
            if (points.Count == 0)
                paper.Paragraph("No design yet, so no hold points.");
            else
                paper.Table(
                    [
                        new("No.", 0.5, Align.Right),
                        new("", 0.45, Align.Middle, Face.Bold),
                        new("True when signed", 6.1),
                        new("Write down", 2.4),
                        new("Name and initials", 1.7),
                        new("Time", 1.4),
                    ],
                    points.Select((p, i) => Row(facts, p, i)),
                    Paper.Small,
                    least: 5.4 + spare,
                    boxed: true
                );
        }

        private static IReadOnlyList<string> Row(OrderFacts facts, HoldPointView point, int i)
        {
            var release = facts.Work!.Plan is { } plan ? HoldPointRelease.Of(facts.Order, plan, point.Code) : null;
            return
            [
                $"{i + 1}",
                point.Kind == HoldKind.Hold ? "H" : "W",
                point.Title + (point.ReleasedBy == "technician" ? "" : $" ({point.ReleasedBy} signs)"),
                string.Join(", ", point.Evidence.Where(e => e != Evidence.Statement).Select(Words.Of)),
                release?.By ?? "",
                release is null ? "" : facts.Moment(release.At)[5..],
            ];
        }

        private void Readings()
        {
            var asked = (facts.Work?.Method.HoldPoints ?? []).SelectMany(p => p.Evidence).ToHashSet();
            paper.Heading("Readings, with the serial number of what you read with");
            Sizes(
                asked.Contains(Evidence.ThicknessReadings) || facts.Work is null,
                asked.Contains(Evidence.DiameterReadings) || facts.Work is null
            );
            if (asked.Contains(Evidence.SurfaceGrade))
                paper.Cells(
                    Cell,
                    ("Surface grade reached", recorded.Grade, 1.2),
                    ("Profile µm, three places", recorded.Profile, 1.4),
                    ("Salt mg/m²", recorded.Surface?.SaltMgM2 is { } salt ? Say($"{salt:0.#}") : "", 0.8),
                    ("Cleaned at", recorded.Cleaned, 0.8),
                    ("Cover by", "", 0.8)
                );
            if (asked.Contains(Evidence.ClimateReading) || asked.Contains(Evidence.Mix))
                Climate();
            if (asked.Contains(Evidence.HardnessReading))
                paper.Cells(
                    Cell,
                    ("Hardness, Shore D, three places", recorded.Hardness, 2),
                    ("Durometer", recorded.Durometer, 1),
                    ("At", recorded.HardnessAt, 0.8)
                );
            paper.Y += 1.5;
            if (asked.Contains(Evidence.TorqueReadings))
                Tightening();
            if (facts.Work is { Method.Method: "welded-patch" or "welded-sleeve" or "section-replacement" })
                Welding();
        }

        // Walls and diameters share a row: the paper has two sides and no third.
        private void Sizes(bool walls, bool diameters)
        {
            List<(string, string, double)> cells = [];
            if (walls && recorded.Walls.Length > 0)
                cells.AddRange([("Walls, mm", recorded.Walls, 2.6), ("Gauge", recorded.WallGauge, 0.8)]);
            else if (walls)
                cells.AddRange([
                    ("Wall upstream, mm", "", 1),
                    ("Wall downstream, mm", "", 1),
                    ("Wall at defect, mm", "", 1),
                    ("Gauge", "", 0.8),
                ]);
            if (diameters && recorded.Diameters.Length > 0)
                cells.Add(("Diameters, mm", recorded.Diameters, 2.6));
            else if (diameters)
                cells.AddRange([
                    ("Outside Ø level, mm", "", 1),
                    ("Outside Ø upright, mm", "", 1),
                    ("Girth, mm", "", 0.9),
                ]);
            if (cells.Count > 0)
                paper.Cells(Cell, [.. cells]);
        }

        private void Climate()
        {
            for (var i = 0; i < 2; i++)
            {
                var read = i < recorded.Climates.Count ? recorded.Climates[i] : null;
                var ask = read?.Asked.Ask;
                paper.Cells(
                    Cell,
                    (i == 0 ? "Climate at" : "again at", read is null ? "" : recorded.Clock(read.At), 0.8),
                    ("Air °C", ask?.Air.Entered ?? "", 0.7),
                    ("Humidity %", ask is null ? "" : Say($"{ask.HumidityPercent:0}"), 0.7),
                    ("Steel °C", ask?.Steel.Entered ?? "", 0.7),
                    ("Dew point °C", read is null ? "" : Say($"{read.Asked.DewPointC:0.0}"), 0.8),
                    ("Steel less dew point, K: 3 or more", read is null ? "" : Say($"{read.Asked.MarginK:0.0}"), 1.6),
                    (
                        "Go / no-go",
                        read is null ? ""
                        : read.Asked.Verdicts.All(v => v.Go) ? "go"
                        : "NO-GO",
                        0.8
                    )
                );
            }
        }

        private void Tightening()
        {
            var method = facts.Work!.Method;
            var count = facts.Work.Plan?.Fasteners ?? Fasteners(method);
            var shown = Math.Clamp(count ?? 8, 1, MostFasteners);
            paper.Table(
                [
                    new($"Pass: {Target(method)}", 2.2),
                    .. Enumerable.Range(1, shown).Select(n => new Column($"{n}", 0.6, Align.Middle)),
                ],
                Passes.Select(
                    (pass, i) =>
                        (IReadOnlyList<string>)
                            [pass, .. Enumerable.Range(1, shown).Select(n => recorded.Tightened(i + 1, n))]
                ),
                Paper.Small,
                least: 5.6 + spare,
                boxed: true
            );
            if (count > MostFasteners)
                paper.Paragraph(
                    $"{count} fasteners: go on with {MostFasteners + 1} on a sheet of its own, and sign it.",
                    Paper.Small
                );
        }

        // A window whose least is above its most is none: nobody may tighten by it.
        private static string Target(MethodDesignView method) =>
            method["torqueNm"] is { } torque
                ? method["torqueLeastNm"] > method["torqueMostNm"]
                    ? Say(
                        $"DO NOT TIGHTEN: {method["torqueLeastNm"]:0.#} N m are needed, {method["torqueMostNm"]:0.#} are borne"
                    )
                    : Say(
                        $"torque {torque:0.#} N m, from {method["torqueLeastNm"]:0.#} to {method["torqueMostNm"]:0.#}"
                    )
                : method["bandTensionLowN"] is { } low
                    ? Say($"tension {low:0} to {method["bandTensionHighN"]:0} N")
                    : "torque or tension as the design says";

        private void Welding()
        {
            paper.Cells(
                Cell,
                ("Welding procedure", "", 1.1),
                ("Welder, mark", "", 1),
                ("Consumable, batch", "", 1.2),
                ("Preheat °C, at", "", 0.9),
                ("Flow and pressure while welding", "", 1.5),
                ("NDT: kind, report, result", "", 1.5)
            );
            paper.Y += 1.5;
        }

        private static int? Fasteners(MethodDesignView m) =>
            m["clampBoltCount"] is { } bolts ? (int)bolts
            : m["bandCount"] is { } bands ? (int)(bands * (m["fastenersPerBand"] ?? 1))
            : null;

        private void Clocks()
        {
            if (facts.Work?.Method is not { SetForLoadHours: > 0 } method)
                return;
            paper.Heading("Clocks: start at first contact; colder steel takes longer, read it at least every 2 h");
            var mixes = recorded.Mixes;
            paper.Table(
                [
                    new("Mix", 0.6),
                    new("Batch, resin and hardener", 2.2),
                    new("Started", 1),
                    new("Use before", 1),
                    new("On the pipe at", 1),
                    new("Steel °C", 0.8),
                    new("Scrapped", 0.8),
                ],
                Enumerable.Range(0, Math.Max(2, mixes.Count)).Select(i => Mixed(i, i < mixes.Count ? mixes[i] : null)),
                Paper.Small,
                least: 5.6 + spare,
                boxed: true
            );
            paper.Cells(
                Cell,
                ("Set for load", Say($"{Long(method.SetForLoadHours)} at {method.CureReferenceC:0.#} °C"), 1.5),
                ("Fully hard", Say($"{Long(method.FullHardnessHours)} at {method.CureReferenceC:0.#} °C"), 1.5),
                ("Pipe °C, time · °C, time · °C, time", recorded.CureLog, 3.2),
                ("May be tested from", recorded.SetFrom, 1.3)
            );
            paper.Y += 1.5;
        }

        private IReadOnlyList<string> Mixed(int i, Mix? mix) =>
            mix is null
                ? [$"{i + 1}", "", "", "", "", "", ""]
                :
                [
                    $"{i + 1}",
                    $"{mix.Asked.Number}{(mix.Asked.HardenerNumber is { } hardener ? $" with {hardener}" : "")}",
                    recorded.Clock(mix.At),
                    recorded.Clock(mix.Asked.UsableUntil),
                    recorded.Used(mix),
                    Say($"{mix.Asked.SteelC:0.#}"),
                    "",
                ];

        private static string Long(double hours) => hours < 2 ? Say($"{hours * 60:0} min") : Say($"{hours:0.#} h");

        private void Test()
        {
            var proof = facts.Order.Last<Proof>()?.Asked.Ask;
            var test = proof?.Test;
            paper.Heading("Test and tag");
            paper.Cells(
                Cell,
                ("Kind", test is null ? "" : Words.Of(test.Kind), 1.1),
                (
                    Say(
                        $"Pressure{(facts.Work?.Method.PressureHeldBar is { } held ? Say($", never above {held:0.##} bar") : "")}"
                    ),
                    test?.Pressure.Entered ?? "",
                    1.6
                ),
                ("Held for", test?.Hold.Entered ?? "", 0.8),
                ("Medium", test?.Medium ?? "", 1),
                ("Gauge", test?.Gauge ?? "", 0.9),
                (
                    "Dry / weep / drip",
                    test is null ? ""
                    : test.Tight ? "tight"
                    : "NOT tight",
                    1
                ),
                ("Tag no. and photo", proof?.Tag ?? "", 1.1)
            );
            var cautions = LaterCautions(facts).Where(AtTheTest).ToList();
            paper.Y += 1;
            if (cautions.Count > 0)
                paper.Columns(cautions, 2, Paper.Small, "▲");
            paper.Y += 0.8;
        }

        private double Signatures()
        {
            paper.Heading("Signatures");
            var fitters = Readiness.Current(facts.Order, ReadinessFor.Fit)?.Asked.Fitters ?? [];
            paper.Cells(
                Cell + 1,
                (Fitter(fitters, 0), "", 1),
                (Fitter(fitters, 1), "", 1),
                ($"Test witness{Witness(facts)}", facts.Order.Last<ProofWitness>()?.By ?? "", 1.2),
                ("Departures accepted, engineer", facts.Order.Last<DepartureAcceptance>()?.By ?? "", 1.2),
                ("Taken into service, operations in charge", facts.Order.Last<Acceptance>()?.By ?? "", 1.4)
            );
            var left = paper.Room;
            paper.Cells(Math.Clamp(left - 0.1, Cell, 60), ("Anything not as written", "", 1));
            return left;
        }

        private static string Fitter(IReadOnlyList<NamedPerson> fitters, int i) =>
            i < fitters.Count ? $"Fitter: {fitters[i].Name}" : "Fitter";

        private static string Witness(OrderFacts facts) =>
            facts.Title.SignedClass switch
            {
                RiskClass.A or RiskClass.B => ": inspector",
                RiskClass.C => ": supervisor",
                _ => "",
            };
    }
}
