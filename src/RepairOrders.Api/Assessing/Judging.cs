using System.Globalization;
using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Risk;
using RepairOrders.Engineering.Strength;
using RepairOrders.Engineering.ThroughWall;
using UnitsNet;
using DefectCause = RepairOrders.Engineering.Damage.DefectCause;
using DefectKind = RepairOrders.Engineering.Damage.DefectKind;
using DefectSide = RepairOrders.Engineering.Damage.DefectSide;
using PeopleNearby = RepairOrders.Engineering.Risk.PeopleNearby;
using SectionStanding = RepairOrders.Engineering.Risk.Standing;

namespace RepairOrders.Api.Assessing;

/// <summary>An assessment in the engine's terms, and what the engine makes of it.</summary>
internal sealed class Judging
{
    private readonly RepairOrder order;
    private readonly RecordAssessment ask;
    private readonly List<CalculationView> calculations = [];

    private Judging(RepairOrder order, RecordAssessment ask, LineFacts facts, Pipe pipe, Defect defect)
    {
        this.order = order;
        this.ask = ask;
        Facts = facts;
        Pipe = pipe;
        Defect = defect;
    }

    public LineFacts Facts { get; }
    public Pipe Pipe { get; }
    public Defect Defect { get; }

    /// <summary>Reads the assessment for the engine.</summary>
    /// <exception cref="ProcedureRefusal">The strength of the metal is known to nobody.</exception>
    public static Judging Of(RepairOrder order, RecordAssessment ask)
    {
        var facts = LineFacts.Of(order, ask.Line, ask.Cyclic)!;
        List<Finding> assumed = [];
        var pipe = facts.Pipe(ask.Metal, ask.QualityFactor, assumed);
        RepairOrder.Refuse(MetalUnknown(facts, pipe));
        var judging = new Judging(order, ask, facts, pipe!, DefectOf(ask));
        if (assumed.Count > 0)
            judging.calculations.Add(
                new("pipe", "What was taken for the pipe", [], [.. assumed.Select(f => f.View())], [])
            );
        return judging;
    }

    /// <summary>The facts as they are now, for the round's assessment.</summary>
    public static FactsView FactsOf(RepairOrder order)
    {
        var judging = Of(order, order.Last<Assessment>()!.Asked.Ask);
        return judging.Facts.View(judging.Pipe);
    }

    public Judgement Judge(DateTimeOffset at)
    {
        var needed = RequiredWall.Assess(Pipe, Duty);
        Keep(needed, "required-wall", "Wall the pipe needs");
        RepairOrder.Refuse(StructuralMissing(needed.Result));
        var required = needed.Result.Required!.Value;
        var measured = Measured;
        var rate = measured ? Rate() : null;
        var life = measured && rate is { } r ? Life(required, r) : (double?)null;
        var earlier = order.Surroundings.EarlierLeaks(order);
        var axial = EndLoad();
        var barred = NoTemporaryRepair(needed.Result, axial);
        return new Judgement(
            Facts.View(Pipe),
            required.Millimeters,
            measured ? Defect.RemainingWall.Millimeters : null,
            measured ? Defect.SoundWallBeside.Millimeters : null,
            SafePressure(rate),
            axial.RestraintNeeded > Force.Zero,
            axial.EndLoad.Kilonewtons,
            rate?.MillimetresPerYear(),
            life,
            LeakRate(),
            earlier,
            Class(required, RepairStrength.NotChosen).View(),
            calculations,
            barred
        );
    }

    // What a restraint would clear is left to the design; what it would not is the answer.
    private IReadOnlyList<string> NoTemporaryRepair(NeededWall needed, AxialCheck axial)
    {
        var asked = new DecisionCase(Pipe, Defect, Facts.Service, needed.Structural ?? needed.Required!.Value)
        {
            GrowthExcluded = !string.IsNullOrWhiteSpace(ask.GrowthExcludedBy),
            BelowMinimumTemperature = Excluded(MetalExclusion.BelowMinimumTemperature),
            HydrogenDamage = Excluded(MetalExclusion.HydrogenDamage),
            CreepRange = Excluded(MetalExclusion.CreepRange),
            AxialStrengthSuffices = axial.RestraintNeeded <= Force.Zero,
            WallMappedEachSide = Millimetres(ask.WallMappedEachSide) ?? Length.Zero,
        };
        Keep(TemporaryRepairDecision.Decide(asked), "temporary-repair", "Whether a temporary repair may be made");
        return
        [
            .. TemporaryRepairDecision
                .Decide(asked with { RestraintDesigned = true })
                .Result.Reasons.Where(r => r.Verdict == Verdict.Stop)
                .Select(r => $"{r.Condition}: {r.Reason}"),
        ];
    }

    private bool Excluded(MetalExclusion exclusion) => ask.Exclusions?.Contains(exclusion) is true;

    /// <summary>The class with a repair of this strength, without age.</summary>
    public RiskRank Class(Length required, RepairStrength repair) =>
        RiskRanking.ToSign(
            Consequences(Facts, ask.Consequences),
            new LikelihoodFacts(
                Defect,
                required,
                Measured,
                repair,
                ask.Cyclic,
                order.Surroundings.EarlierLeaks(order),
                Reinjections: 0
            ),
            new SectionStanding(order.Surroundings.LiveOnSection + 1)
        );

    public static ConsequenceFacts Consequences(LineFacts facts, LeakConsequences leak) =>
        new(
            facts.Service,
            facts.Dn,
            leak.People.As<PeopleNearby>(),
            leak.ListedContents,
            leak.LiquefiedFlammableGas,
            leak.StrongAcidOrAlkali,
            ShipClassOne: false,
            leak.IsolableWithinTenMinutes,
            Mass.FromKilograms(leak.EscapableInventory.Value),
            leak.DrainsToWater
        );

    private bool Measured =>
        Defect.SoundWallBeside.Millimeters > 0 && (Defect.ThroughWall || Defect.RemainingWall.Millimeters > 0);

    private WallDuty Duty =>
        new(
            WallCode.B313,
            Facts.Service.DesignPressure,
            Facts.Service.DesignTemperature,
            StructuralMinimum: Millimetres(ask.StructuralMinimum)
        );

    private string? LeakRate()
    {
        if (LeakRates.Of(Facts.Service, Defect) is not { } leak)
            return null;
        Keep(leak, "leak-rate", "What comes out of the hole, at most");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"up to {leak.Result.MassFlow.KilogramsPerHour:G3} kg/h through {Defect.HoleDiameter.Millimeters:0.#} mm"
        );
    }

    private AxialCheck EndLoad()
    {
        var check = AxialLoad.Check(
            new AxialCase(
                Pipe,
                Defect,
                Facts.Service.DesignPressure,
                Pressure.FromBars(ask.SurgeRise?.Value ?? 0),
                Pipe.OutsideDiameter,
                Force.FromKilonewtons(ask.OutsideAxialLoad?.Value ?? 0),
                Torque.FromNewtonMeters(ask.OutsideBending?.Value ?? 0),
                ask.Unrestrained,
                ConditionUnknown: !Measured,
                RepairCarriesAxialLoad: false
            )
        );
        Keep(check, "axial-load", "Whether the pipe holds together");
        return check.Result;
    }

    private double? SafePressure(Speed? rate)
    {
        var sound = Defect.SoundWallBeside;
        if (!Measured || Defect.ThroughWall || Defect.RemainingWall >= sound || !IsMetalLoss(Defect.Kind))
            return null;
        var asked = new StrengthCase(
            Pipe,
            MetalLoss.Of(Defect, sound),
            Facts.Service.DesignPressure,
            Facts.Service.DesignTemperature,
            SafetyFactor,
            UsageFactor,
            rate is { } r ? Plant(r) : null
        );
        if (Surveys.Of(ask) is { } grid && grid.Statistics().Least.Wall <= Defect.RemainingWall)
        {
            var surveyed = grid.Assess(asked, Duty);
            Keep(surveyed, "wall-loss-grid", "Strength of the thinned pipe, by the survey of its wall");
            return surveyed.Result.Strength.SafePressure?.Bars;
        }
        // A spot thinner than the whole survey lies outside it: then the survey does not count.
        var compared = RemainingStrength.Compare(asked);
        Keep(compared, "remaining-strength", "Strength of the thinned pipe");
        return compared.Result.SafePressure?.Bars;
    }

    // The wall is read again after a year at the latest, whatever the class.
    private PlantPiping Plant(Speed rate) =>
        new(Length.FromMillimeters(rate.MillimetresPerYear()), Millimetres(ask.DistanceToDiscontinuity), ask.Cyclic);

    private static bool IsMetalLoss(DefectKind kind) =>
        kind is DefectKind.GeneralThinning or DefectKind.Pitting or DefectKind.Pinhole or DefectKind.Hole;

    // 1/0.72: the usual design factor of line pipe.
    private const double SafetyFactor = 1.39;
    private const double UsageFactor = 0.72;

    private Speed? Rate()
    {
        var given = ask.CorrosionRate is { } rate ? CorrosionRate.FromMillimetresPerYear(rate.Value) : (Speed?)null;
        var place = ask.AllReadings().Any(r => r.Where == ReadingPlace.AtDefect)
            ? ReadingPlace.AtDefect
            : ReadingPlace.Beside;
        var readings = ask.AllReadings()
            .Concat(ask.EarlierReadings ?? [])
            .Where(r => r.Where == place)
            .Select(r => new WallReading(r.On, Length.FromMillimeters(r.Wall.Value), r.Spot, r.Instrument));
        var rates = CorrosionRate.Assess(
            new WallHistory(
                [.. readings],
                Pipe.NominalWall,
                Facts.InServiceFrom,
                Defect.Kind == DefectKind.Pitting,
                Defect.ThroughWall,
                given
            )
        );
        Keep(rates, "corrosion-rate", "Rate at which the wall goes");
        var governing = rates.Result.Governing ?? given;
        RepairOrder.Refuse(RateUnknown(governing));
        return governing;
    }

    private double? Life(Length required, Speed rate)
    {
        var wall = Defect.ThroughWall ? Length.Zero : Defect.RemainingWall;
        var life = RemainingLife.Of(wall, required, rate);
        var working = new Working();
        var source = new Clause("API 570", "7.1.1");
        var CR = working.Given("CR", "rate to reckon with", rate.MillimetresPerYear(), "mm/y", source);
        if (life is { } left)
            working.Step(
                "RL",
                "remaining life of the thinnest wall",
                "(t_actual − t_required)/CR, 0 where it is short",
                $"({wall.Millimeters} − {required.Millimeters})/{CR}",
                left.Days / CorrosionRate.DaysPerYear,
                "y",
                source
            );
        calculations.Add(
            new("remaining-life", "Life of the thinnest wall", [.. working.Select(s => s.View())], [], [])
        );
        return life?.Days;
    }

    private void Keep<T>(RepairOrders.Engineering.Calculated<T> calculated, string code, string words) =>
        calculations.Add(calculated.View(code, words));

    private static Defect DefectOf(RecordAssessment ask)
    {
        var d = ask.Defect;
        return new(
            d.Kind.As<DefectKind>(),
            d.Side.As<DefectSide>(),
            d.Cause.As<DefectCause>(),
            d.ThroughWall,
            Length.FromMillimeters(d.AxialLength.Value),
            Length.FromMillimeters(d.CircumferentialLength.Value),
            d.ThroughWall ? Length.Zero : Least(ask, ReadingPlace.AtDefect),
            Millimetres(d.HoleDiameter) ?? Length.Zero,
            Least(ask, ReadingPlace.Beside),
            d.ClockHours,
            d.Growing
        );
    }

    private static Length Least(RecordAssessment ask, ReadingPlace where) =>
        Length.FromMillimeters(
            ask.AllReadings().Where(r => r.Where == where).Select(r => r.Wall.Value).DefaultIfEmpty().Min()
        );

    private static Length? Millimetres(Measure? length) => length is { } l ? Length.FromMillimeters(l.Value) : null;

    private static Objection? MetalUnknown(LineFacts facts, Pipe? pipe) =>
        pipe is not null
            ? null
            : new Objection(
                "metal-unknown",
                $"No allowable stress is listed for {facts.Source.Grade} at {facts.Service.DesignTemperature.DegreesCelsius:0} °C. Give the metal and its stress with their basis.",
                "integrity engineer, after a material check where the grade is not known"
            );

    private static Objection? StructuralMissing(NeededWall needed) =>
        needed.Required is not null
            ? null
            : new Objection(
                "structural-minimum-missing",
                "The table of structural minima does not cover this metal, size or temperature. Give the least wall the pipe needs for its own weight.",
                "integrity engineer"
            );

    private static Objection? RateUnknown(Speed? rate) =>
        rate is not null
            ? null
            : new Objection(
                "rate-unknown",
                "No earlier reading, no year of installation and no rate: the remaining life cannot be told. Give a rate with its basis.",
                "integrity engineer"
            );
}
