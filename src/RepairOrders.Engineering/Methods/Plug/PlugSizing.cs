using RepairOrders.Engineering.Joints;
using static RepairOrders.Engineering.Methods.Sheet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.Plug;

/// <summary>Sizes one screw plug: the least thread that reaches sound metal, and what its engagement holds.</summary>
internal sealed class PlugSizing(Sheet s)
{
    // Half the cylinder of the thread is metal, and 0.6 of the tensile allowable is allowed in shear.
    private const double ThreadShare = 0.5;
    private const double ShearShare = 0.6;

    private static readonly string[] OwnCautions =
    [
        "Stay out of the line of the plug.",
        "Do not drive a plug so far that it blocks the flow.",
        "Drilling thin pipe can tear it: prove dead first.",
    ];

    public MethodDesign Design()
    {
        var P = s.GreatestPressure();
        var plug = Choose();
        var d = plug.Diameter.Millimeters;
        var wall = EngagementAtEnd();
        Threads(plug, wall);
        var S = s.Given("S", "allowable stress of the pipe", s.Pipe.AllowableStress.Megapascals, "MPa", Sources.Pipe);
        var held = s.Step(
            "P held",
            "gauge pressure the thread holds",
            "0.6 S × 0.5 π d t/(π d²/4)",
            $"4 × {ShearShare} × {S} × {ThreadShare} × {wall}/{d}",
            4 * ShearShare * S * ThreadShare * wall / d,
            "MPa",
            Sources.Balance
        );
        s.Add(
            Finding.AtLeast(
                "thread-holds",
                "Pressure the thread holds",
                held * 10,
                P * 10,
                "bar",
                Sources.Balance,
                LimitKind.Absolute
            )
        );
        var pipe = s.Step(
            "P pipe",
            "gauge pressure the wall round the plug holds",
            "2 S t/D",
            $"2 × {S} × {wall}/{s.Pipe.OutsideDiameter.Millimeters}",
            2 * S * wall / s.Pipe.OutsideDiameter.Millimeters,
            "MPa",
            Sources.Balance
        );
        s.Add(
            Finding.AtLeast(
                "pipe-holds",
                "Pressure the wall round the plug holds",
                pipe * 10,
                P * 10,
                "bar",
                Sources.Balance,
                LimitKind.Absolute
            )
        );
        return s.Design(
            [K.PlugDiameter.Of(d), K.PlugEngagement.Of(wall)],
            // A thread is stronger than the pipe it sits in.
            Math.Min(held, pipe) * 10,
            [
                new("plug", Text($"screw plug {plug.Name} with collar"), 1, "pcs", "plug"),
                new("sealant", "thread sealant stated for the fluid", 1, "pcs", "plug"),
            ],
            [.. Cautions.Bolts, .. OwnCautions],
            CureTimes.None,
            s["designLifeDays"],
            plug.Pitch.Millimeters * s.Count("leastThreads"),
            carriesAxialLoad: false
        );
    }

    private MetricBolt Choose()
    {
        var (hole, edge) = (s.Defect.HoleDiameter.Millimeters, s["soundEdgeMm"]);
        var need = s.Step(
            "d need",
            "hole drilled to sound metal",
            "d + 2 e",
            $"{hole} + 2 × {edge}",
            hole + 2 * edge,
            "mm",
            Sources.Geometry
        );
        var plug = MetricBolt.All.FirstOrDefault(b => b.Diameter.Millimeters >= need) ?? MetricBolt.All[^1];
        s.Add(
            Finding.AtLeast(
                "plug-covers",
                "Plug",
                plug.Diameter.Millimeters,
                need,
                "mm",
                Sources.Geometry,
                LimitKind.Absolute
            )
        );
        s.Given("d", $"plug {plug.Name}", plug.Diameter.Millimeters, "mm", Sources.Chosen);
        return plug;
    }

    private double EngagementAtEnd()
    {
        var (now, growth, days) = (s.Defect.SoundWallBeside.Millimeters, s["growthMmPerYear"], s["designLifeDays"]);
        return s.Step(
            "t",
            "wall that engages at the end of life",
            "t − CR y",
            $"{now} − {growth} × {days}/365",
            Math.Max(0, now - growth * days / 365),
            "mm",
            Sources.Pipe
        );
    }

    private void Threads(MetricBolt plug, double wall)
    {
        var (pitch, least) = (plug.Pitch.Millimeters, s.Count("leastThreads"));
        var threads = s.Step("nt", "threads that bear", "t/p", $"{wall}/{pitch}", wall / pitch, "-", Sources.Geometry);
        s.Add(Finding.AtLeast("threads", "Threads that bear", threads, least, "-", Sources.PuttyManual));
    }
}
