using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using static RepairOrders.Engineering.ThroughWall.Verdict;

namespace RepairOrders.Engineering.ThroughWall;

// The table of when no temporary repair is acceptable, as data. A row that a proof clears names the proof in its reason.
internal static class DecisionTable
{
    private static readonly Clause Piping = new("API 570", "8.1", Provenance.FromMemory);
    private static readonly Clause Exclusions = new("ASME B31G and API 579-1 exclusions", "", Provenance.FromMemory);
    private static readonly Clause Clamps = new("UK HSE note on leak sealing repair clamps", "");
    private static readonly Clause SafetyNotice = new("UK HSE Safety Notice 4/2005", "");
    private static readonly Clause Nuclear = new("US NRC Generic Letter 90-05 (1990)", "");
    private static readonly Clause NuclearSize = new("US NRC Generic Letter 90-05 (1990)", "", Provenance.FromMemory);
    private static readonly Clause Navy = new("US Navy, article on damage-control pipe patches", "");
    private static readonly Clause GasLaw = new("49 CFR 192.717; 16 NYCRR 255.717", "(b)");
    private static readonly Clause CutOff = new("ASME B31G", "80 % depth", Provenance.FromMemory);
    private static readonly Clause Own = new("decision table of the service", "", Provenance.OwnRule);

    public static readonly DecisionRule NoRow = new(
        "no-routine-row",
        "No row of the table is met",
        Engineer,
        "what is not written down as routine is for an engineer to decide.",
        Own,
        _ => true
    );

    public static readonly IReadOnlyList<DecisionRule> Rules =
    [
        .. CracksAndMetal(),
        .. LossAndEndLoad(),
        .. Duty(),
        .. Patches(),
        .. Scope(),
    ];

    private static IEnumerable<DecisionRule> CracksAndMetal() =>
        [
            new(
                "crack-growing",
                "Crack, or a weld leak by fatigue, whose growth is not excluded",
                Stop,
                "in-service cracks are not covered; a proof that it will not grow makes it an engineer's decision.",
                Piping,
                d => Cracked(d) && !d.GrowthExcluded
            ),
            new(
                "crack-proved",
                "Crack that is proved not to grow",
                Engineer,
                "the piping engineer decides, with the proof in writing.",
                Piping,
                d => Cracked(d) && d.GrowthExcluded
            ),
            new(
                "gray-iron",
                "Gray cast iron",
                Engineer,
                "brittle: never load clamp bolts on its thin wall.",
                new("ASME B31.3 restrictions on brittle metals", "", Provenance.FromMemory),
                d => d.Pipe.Metal == MetalFamily.GrayIron
            ),
            new(
                "brittle-temperature",
                "Metal below its least design temperature",
                Stop,
                "it may break without warning; warm it or take it out of service.",
                Exclusions,
                d => d.BelowMinimumTemperature
            ),
            new(
                "hydrogen-damage",
                "Hydrogen damage",
                Stop,
                "the metal beside the defect cannot be relied on.",
                Exclusions,
                d => d.HydrogenDamage
            ),
            new("creep-range", "Creep range", Stop, "strength falls with time.", Exclusions, d => d.CreepRange),
        ];

    private static IEnumerable<DecisionRule> LossAndEndLoad() =>
        [
            new(
                "deep-loss-loose",
                "Less than 20 % of the wall left, end load neither proved nor restrained",
                Stop,
                "the pipe may part: prove its axial strength or design a restraint.",
                CutOff,
                d => DeepLoss(d) && !HoldsTogether(d)
            ),
            new(
                "deep-loss-held",
                "Less than 20 % of the wall left, end load proved or restrained",
                Engineer,
                "past 80 % depth no pressure is credited to the wall.",
                CutOff,
                d => DeepLoss(d) && HoldsTogether(d)
            ),
            new(
                "end-load-short",
                "Wall too weak for the end load and no restraint designed",
                Stop,
                "a pipe has pulled out of a clamp that only sealed; design a restraint.",
                Clamps,
                d => d is { AxialStrengthSuffices: false, RestraintDesigned: false }
            ),
            new(
                "end-load-restrained",
                "Wall too weak for the end load, restraint designed",
                Engineer,
                "seal and restraint are two approvals.",
                Clamps,
                d => d is { AxialStrengthSuffices: false, RestraintDesigned: true }
            ),
            new(
                "hole-may-part",
                "Hole wider than 50 mm or a quarter of the diameter",
                Engineer,
                "it is able to part the pipe.",
                Own,
                d =>
                    Hole(d) > 0
                    && HoleClasses.OfService(d.Defect.HoleDiameter, d.Pipe.OutsideDiameter).Code == "separation-capable"
            ),
            new(
                "cause-unknown",
                "Unknown mechanism and the wall not mapped for one diameter and 300 mm on both sides",
                Stop,
                "map the wall first: what holed it here may be beside it too.",
                SafetyNotice,
                d =>
                    d.Defect.Cause == DefectCause.Unknown
                    && d.WallMappedEachSide.Millimeters < Math.Max(d.Pipe.OutsideDiameter.Millimeters, 300)
            ),
        ];

    private static IEnumerable<DecisionRule> Duty() =>
        [
            new(
                "safety-critical-hydrocarbon",
                "Safety-critical flammable service",
                Engineer,
                "like-for-like replacement comes first; anything else is temporary until then.",
                SafetyNotice,
                d => d.Service is { SafetyCritical: true, Flammable: true }
            ),
            new(
                "nuclear-no-relief",
                "Nuclear class 1 to 3 without written relief",
                Stop,
                "no repair outside the code without the regulator's relief.",
                Nuclear,
                d => d is { NuclearClass: > 0, WrittenRelief: false }
            ),
            new(
                "nuclear-relief",
                "Nuclear class 1 to 3 with written relief",
                Engineer,
                "within the terms of the relief, to the next scheduled outage over 30 days.",
                Nuclear,
                d => d is { NuclearClass: > 0, WrittenRelief: true }
            ),
            new(
                "nuclear-flaw-size",
                "Nuclear class and a through-wall flaw over 76 mm or 15 % of the girth",
                Stop,
                "past the size that was found tolerable.",
                NuclearSize,
                d =>
                    d.NuclearClass > 0
                    && d.Defect.ThroughWall
                    && Extent(d) > Math.Min(76, 0.15 * Math.PI * d.Pipe.OutsideDiameter.Millimeters)
            ),
            new(
                "marine-class-1",
                "Marine class 1",
                Engineer,
                "for the surveyor or an engineer.",
                PipingClass.Society,
                d => d.MarineClass == 1
            ),
            new(
                "toxic",
                "Toxic fluid",
                Engineer,
                "for the surveyor or an engineer.",
                PipingClass.Society,
                d => d.Service.Toxic || d.Service.Category == ServiceCategory.M
            ),
            new(
                "flammable-gas",
                "Flammable gas, or flammable liquid that flashes",
                Engineer,
                "for the surveyor or an engineer.",
                PipingClass.Society,
                d => d.Service is { Flammable: true, State: FluidState.Gas or FluidState.FlashingLiquid }
            ),
            new(
                "steam-over-7-bar",
                "Steam over 7 bar",
                Engineer,
                "scalds, and the seal's temperature.",
                Own,
                d => d.Service.State == FluidState.Steam && d.Service.OperatingPressure.Bars > 7
            ),
        ];

    private static IEnumerable<DecisionRule> Patches() =>
        [
            new(
                "soft-on-gas-or-flammable",
                "Gas or flammable fluid under a soft patch or wrap without fire rating",
                Stop,
                "it burns through; choose a method with a fire rating.",
                Navy,
                d => Soft(d) && !d.FireRated && (d.Service.Flammable || d.Service.State == FluidState.Gas)
            ),
            new(
                "soft-over-10-bar",
                "Soft patch or wrap at over 10.3 bar",
                Stop,
                "past the pressure that practice gives it (150 psi).",
                Navy,
                d => d.Repair == RepairInMind.SoftPatch && d.Service.OperatingPressure.PoundsForcePerSquareInch > 150
            ),
            new(
                "wrap-on-steam",
                "Resin tape on steam",
                Stop,
                "not made for steam.",
                Navy,
                d => d.Repair == RepairInMind.Wrap && d.Service.State == FluidState.Steam
            ),
            new(
                "patch-gas-transmission",
                "Fillet-welded patch on gas transmission outside what the law allows",
                Stop,
                "only on a corrosion-pit leak, SMYS to 40 000 psi, at least as thick as the pipe, to half the diameter, corners rounded.",
                GasLaw,
                d => d is { Repair: RepairInMind.WeldedPatch, GasTransmission: true } && !PatchFits(d)
            ),
            new(
                "patch-outside",
                "Fillet-welded patch outside the size and steel it is known for",
                Engineer,
                "corrosion-pit leak, SMYS to 40 000 psi, at least as thick as the pipe, to half the diameter, corners rounded.",
                GasLaw,
                d => d is { Repair: RepairInMind.WeldedPatch, GasTransmission: false } && !PatchFits(d)
            ),
            new(
                "clamp-gas-transmission",
                "Bolt-on clamp on gas transmission on anything but a corrosion-pit leak",
                Stop,
                "the law allows it on corrosion pits only.",
                GasLaw,
                d => d is { Repair: RepairInMind.BoltedClamp, GasTransmission: true } && !CorrosionPit(d)
            ),
        ];

    private static IEnumerable<DecisionRule> Scope() =>
        [
            new(
                "not-straight-pipe",
                "Leak at a flange, valve, thread or other joint",
                Engineer,
                "the equations for straight pipe do not apply.",
                Own,
                d => d.Defect.Kind == DefectKind.Joint
            ),
            new(
                "routine",
                "Water, air or nitrogen within class 3, pinhole or no hole, wall beside at or above the structural minimum",
                Ok,
                "routine.",
                PipingClass.Society,
                Routine
            ),
        ];

    private static bool Cracked(DecisionCase d) =>
        d.Defect.Kind == DefectKind.CrackLike
        || d.Defect is { Kind: DefectKind.WeldDefect, Cause: DefectCause.Fatigue };

    private static bool HoldsTogether(DecisionCase d) => d.RestraintDesigned || d.AxialStrengthSuffices == true;

    // A pinhole in sound wall is no loss of section.
    private static bool DeepLoss(DecisionCase d) =>
        (d.Defect.ThroughWall || d.Defect.RemainingWall < 0.2 * d.Pipe.NominalWall) && !PinholeInSoundWall(d);

    private static bool PinholeInSoundWall(DecisionCase d) =>
        d.Defect.ThroughWall && Hole(d) is > 0 and <= 3 && d.Defect.SoundWallBeside >= d.StructuralMinimum;

    private static double Hole(DecisionCase d) => d.Defect.HoleDiameter.Millimeters;

    private static double Extent(DecisionCase d) =>
        Math.Max(Hole(d), Math.Max(d.Defect.AxialLength.Millimeters, d.Defect.CircumferentialLength.Millimeters));

    private static bool Soft(DecisionCase d) => d.Repair is RepairInMind.SoftPatch or RepairInMind.Wrap;

    private static bool CorrosionPit(DecisionCase d) =>
        d.Defect.Kind is DefectKind.Pitting or DefectKind.Pinhole
        && d.Defect.Cause
            is DefectCause.InternalCorrosion
                or DefectCause.ExternalCorrosion
                or DefectCause.CorrosionUnderLagging;

    private static bool PatchFits(DecisionCase d) =>
        CorrosionPit(d)
        && d.Pipe.YieldStrength is { KilopoundsForcePerSquareInch: <= 40 }
        && d.PatchThickness >= d.Pipe.NominalWall
        && d.PatchSize <= d.Pipe.OutsideDiameter / 2
        && d.PatchCornersRounded;

    private static bool Routine(DecisionCase d) =>
        d.Service
            is { Flammable: false, Toxic: false, SafetyCritical: false, State: FluidState.Liquid or FluidState.Gas }
        && d.Service.Category == ServiceCategory.D
        && PipingClass.BySociety("other", d.Service.DesignPressure, d.Service.DesignTemperature) == 3
        && Hole(d) <= 3
        && (!d.Defect.ThroughWall || Hole(d) > 0)
        && d.Defect.SoundWallBeside >= d.StructuralMinimum;
}
