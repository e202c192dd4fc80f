using System.Globalization;
using System.Text.RegularExpressions;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;
using RepairOrders.Engineering.Curing;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Charts;

/// <summary>The charts an order has the data for.</summary>
internal static partial class OrderCharts
{
    private const int Steps = 40;

    public static IReadOnlyList<Chart> Of(RepairOrder order) =>
        [
            .. new[] { Grid(order), RiverBottom(order), Strength(order), Trend(order), Cured(order) }.OfType<Chart>(),
            .. DesignCharts.Of((order.PendingDesign ?? order.ApprovedDesign)?.Asked.Method),
        ];

    // Readings whose spot tells the clock position; what follows it names the place along the pipe.
    private static Chart? Grid(RepairOrder order)
    {
        if (order.Last<Assessment>()?.Asked is not { } assessment)
            return null;
        if (Surveys.Of(assessment.Ask) is { } survey)
            return Surveyed(survey, assessment);
        var read = assessment
            .Ask.Readings.Select(r => (Clock: AtClock().Match(r.Spot), Reading: r))
            .Where(r => r.Clock.Success)
            .Select(r =>
                (
                    Hours: double.Parse(r.Clock.Groups[1].Value, CultureInfo.InvariantCulture),
                    Place: Place(r.Clock.Groups[2].Value, r.Reading.Where),
                    Wall: r.Reading.Wall.Value
                )
            )
            .ToList();
        if (read.Count < 2)
            return null;
        var places = read.Select(r => r.Place).Distinct().ToList();
        var hours = read.Select(r => r.Hours).Distinct().Order().ToList();
        return ThicknessGrid.Of(
            places,
            hours,
            [
                .. hours.Select(h =>
                    (IReadOnlyList<double?>)
                        [
                            .. places.Select(p =>
                                read.Where(r => r.Hours == h && r.Place == p).Select(r => (double?)r.Wall).Min()
                            ),
                        ]
                ),
            ],
            assessment.Judgement.Facts.NominalWallMm,
            assessment.Judgement.RequiredWallMm
        );
    }

    private static Chart Surveyed(WallLossGrid survey, SignedAssessment assessment)
    {
        var facts = assessment.Judgement.Facts;
        return SurveyCharts.Grid(
            survey,
            assessment.Ask.Survey!.FirstClockHours,
            facts.OutsideDiameterMm,
            facts.NominalWallMm,
            assessment.Judgement.RequiredWallMm
        );
    }

    private static Chart? RiverBottom(RepairOrder order) =>
        order.Last<Assessment>()?.Asked is { Judgement.SoundWallMm: > 0 and var sound } assessment
        && Surveys.Of(assessment.Ask) is { } survey
            ? SurveyCharts.RiverBottom(survey, assessment.Judgement.Facts.OutsideDiameterMm, sound)
            : null;

    private static string Place(string rest, ReadingPlace where) =>
        rest.Trim(' ', ',', ';') is { Length: > 0 } words ? words
        : where == ReadingPlace.AtDefect ? "at defect"
        : "beside";

    // Safe pressure by modified B31G over the length, at this depth and in this pipe.
    private static Chart? Strength(RepairOrder order)
    {
        if (order.Last<Assessment>()?.Asked is not { Judgement.SafePressureBar: not null } assessment)
            return null;
        var judging = Judging.Of(order, assessment.Ask);
        var (pipe, wall) = (judging.Pipe, judging.Defect.SoundWallBeside);
        if (pipe.YieldStrength is not { } yield)
            return null;
        var depth = wall - judging.Defect.RemainingWall;
        var (facts, length) = (assessment.Judgement.Facts, judging.Defect.AxialLength.Millimeters);
        double Bursts(double mm) =>
            2
            * PipelineMetalLoss
                .FailureStressModified(
                    pipe.OutsideDiameter,
                    wall,
                    depth,
                    Length.FromMillimeters(mm),
                    yield + Pressure.FromMegapascals(69)
                )
                .Bars
            * wall.Millimeters
            / pipe.OutsideDiameter.Millimeters;
        var most = Math.Max(100, 2.5 * length);
        List<Spot> curve =
        [
            .. Enumerable
                .Range(0, Steps + 1)
                .Select(i => most * Math.Pow((double)i / Steps, 2))
                .Select(x => new Spot(x, Bursts(x))),
        ];
        const string title = "Strength against the length of the defect";
        var picture = new Graph("strength", title, "length along the pipe, mm").Of([
            new(
                "gauge pressure, bar",
                [
                    new(Say($"bursts, {Number(depth.Millimeters)} deep"), curve, Pen.Outline) { Named = curve[^8] },
                    new(
                        Say($"this defect, {Number(length)} long"),
                        [new(length, Bursts(length))],
                        Pen.Alarm,
                        Marked: true
                    ),
                ],
                [
                    new(Say($"design {facts.DesignPressureBar:0.##}"), facts.DesignPressureBar),
                    new(
                        Say($"safe {assessment.Judgement.SafePressureBar:0.##}"),
                        assessment.Judgement.SafePressureBar!.Value
                    ),
                ]
            ),
        ]);
        return new(
            "strength",
            title,
            ["length, mm", "burst by modified B31G, bar"],
            [
                .. curve
                    .Append(new(length, Bursts(length)))
                    .OrderBy(p => p.X)
                    .Select(p => (IReadOnlyList<string>)[Chart.Number(p.X), Chart.Number(p.Y)]),
            ],
            picture
        );
    }

    // The thinnest reading of each day, the required wall, and where the rate to reckon with leads by the end date.
    private static Chart? Trend(RepairOrder order)
    {
        if (order.Last<Assessment>()?.Asked is not { } assessment)
            return null;
        var read = (assessment.Ask.EarlierReadings ?? [])
            .Concat(assessment.Ask.Readings)
            .Concat(order.All<Visit>().SelectMany(v => v.Asked.Ask.Readings ?? []))
            .GroupBy(r => r.On)
            .Select(g => (On: g.Key, Wall: g.Min(r => r.Wall.Value)))
            .OrderBy(r => r.On)
            .ToList();
        var end = EndDates.Of(order) ?? order.PendingDesign?.Asked.EndDate.On;
        if (read.Count == 0 || (read.Count < 2 && end is null))
            return null;
        var (last, rate) = (read[^1], assessment.Judgement.RateMmPerYear);
        List<Curve> curves =
        [
            new("thinnest read", [.. read.Select(r => new Spot(r.On.DayNumber, r.Wall))], Pen.Outline, Marked: true),
        ];
        var until = end is { } day && day > last.On ? day : last.On.AddYears(1);
        if (rate is { } loss)
        {
            var then = Math.Max(0, last.Wall - loss * (until.DayNumber - last.On.DayNumber) / 365.25);
            curves.Add(
                new(
                    Say($"{loss:0.00} mm a year"),
                    [new(last.On.DayNumber, last.Wall), new(until.DayNumber, then)],
                    Pen.Hidden
                )
            );
        }
        List<Limit> limits = [];
        if (assessment.Judgement.RequiredWallMm is { } required)
            limits.Add(new(Say($"required {Number(required)}"), required));
        if (end is { } ends)
            limits.Add(new(Say($"ends {ends:yyyy-MM-dd}"), ends.DayNumber, Upright: true));
        const string title = "Thickness trend";
        var picture = new Graph("thickness-trend", title, "day") { Calendar = true }.Of([
            new("wall, mm", curves, limits),
        ]);
        return new(
            "thickness-trend",
            title,
            ["day", "thinnest wall read, mm"],
            [.. read.Select(r => (IReadOnlyList<string>)[Say($"{r.On:yyyy-MM-dd}"), Chart.Number(r.Wall)])],
            picture
        );
    }

    // Temperatures on the pipe, and the hours they are worth at the reference temperature.
    private static Chart? Cured(RepairOrder order)
    {
        var course = CureClock.Course(order, 200);
        if (course.Count < 2 || CureClock.Of(order) is not [.., var clock])
            return null;
        var start = course[0].Read.At;
        double Hours(LogReading read) => (read.At - start).TotalHours;
        var reference = WorkPlan.Of(order)!.Design.CureReferenceC;
        const string title = "Cure against the temperature log";
        var picture = new Graph("cure", title, "hours since it was mixed").Of([
            new(
                "steel, °C",
                [
                    new(
                        "steel, as read",
                        [.. course.Select(c => new Spot(Hours(c.Read), c.Read.Temperature.DegreesCelsius))],
                        Pen.Outline,
                        Marked: true
                    ),
                ],
                [new(Say($"reference {Number(reference)} °C"), reference)]
            )
            {
                OwnZero = true,
            },
            new(
                "hours at the reference",
                [new("cured so far", [.. course.Select(c => new Spot(Hours(c.Read), c.Hours))], Pen.Alarm)],
                [
                    new(Say($"set for load {Number(clock.SetForLoadHours)} h"), clock.SetForLoadHours),
                    new(Say($"fully hard {Number(clock.FullHardnessHours)} h"), clock.FullHardnessHours),
                ]
            ),
        ]);
        return new(
            "cure",
            title,
            ["hours since mixed", "pipe, °C", "hours at the reference"],
            [
                .. course.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            Chart.Number(Hours(c.Read)),
                            Chart.Number(c.Read.Temperature.DegreesCelsius),
                            Chart.Number(c.Hours),
                        ]
                ),
            ],
            picture
        );
    }

    [GeneratedRegex(@"^\s*(\d{1,2}(?:\.\d)?)\s*o'clock(.*)$", RegexOptions.IgnoreCase)]
    private static partial Regex AtClock();
}
