using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Testing;

// One test from the code's pressure to its steps. Pressures in bar, gauge.
internal sealed class TestPlanning
{
    private const double AtmosphereBar = 1.01325;
    private const double ReliefBar = 3.45;
    private const double FirstGasLookBar = 1.7;

    private static readonly Clause Hydro = new("ASME B31.3", "345.4.2");
    private static readonly Clause Gas = new("ASME B31.3", "345.5", Provenance.FromMemory);
    private static readonly Clause Power = new("ASME B31.1", "137", Provenance.FromMemory);
    private static readonly Clause Initial = new("ASME B31.3", "345.7", Provenance.FromMemory);
    private static readonly Clause Sensitive = new("ASME B31.3", "345.8", Provenance.FromMemory);
    private static readonly Clause Energetic = new("ASME PCC-2", "Art. 501, App. II, III");
    private static readonly Clause Given = new("as given", "", Provenance.Entered);
    private static readonly Clause Own = new("test of a temporary repair", "", Provenance.OwnRule);

    private readonly PressureTestAsk ask;
    private readonly Working working = new();
    private readonly List<Finding> findings = [];
    private readonly double design;
    private readonly double operating;
    private readonly bool gas;

    public TestPlanning(PressureTestAsk ask)
    {
        this.ask = ask;
        design = Require.Between("designPressureBar", ask.DesignPressure.Bars, 1e-3, 10_000);
        operating = Require.Between("operatingPressureBar", ask.OperatingPressure.Bars, 0, 10_000);
        gas = ask.GasInside || ask.Kind is TestKind.Pneumatic or TestKind.PowerPneumatic or TestKind.SensitiveLeak;
        if (gas && ask.Volume is null)
        {
            throw new ImpossibleInputException("volumeM3", "missing", "the volume under pressure, since gas is inside");
        }
    }

    public Calculated<PressureTest> Answer()
    {
        working.Given("P", "design pressure", design, "bar", Given);
        working.Given("P_operating", "pressure in operation", operating, "bar", Given);
        var code = CodePressure();
        var caps = Caps();
        var least = caps.MinBy(c => c.Pressure.Bars)!;
        var serviceOnly = code > least.Pressure.Bars;
        var test = working.Step(
            "PT",
            "test pressure",
            "P_code where at most the cap, else min(P_operating, cap)",
            serviceOnly
                ? $"min({operating}, {least.Pressure.Bars})"
                : (FormattableString)$"{code} ≤ {least.Pressure.Bars}",
            serviceOnly ? Math.Min(operating, least.Pressure.Bars) : code,
            "bar",
            Own
        );
        Judge(code, least, serviceOnly);
        Category();
        GasCeiling(test);
        var energy = Energy(test);
        return new(
            new(
                Pressure.FromBars(test),
                Pressure.FromBars(code),
                least,
                serviceOnly,
                Steps(test),
                gas ? Pressure.FromBars(test + Math.Min(ReliefBar, 0.1 * test)) : null,
                energy,
                energy is { } e ? StoredEnergy.StandOff(e) : null
            ),
            [.. working],
            findings,
            Cautions(energy)
        );
    }

    private double CodePressure()
    {
        var (ST, S) = (ask.StressAtTest.Megapascals, ask.StressAtDesign.Megapascals);
        return ask.Kind switch
        {
            TestKind.ServicePressure => Asked("P_operating", $"{operating}", ask.OperatingPressure, Own),
            TestKind.Hydrostatic => Asked(
                "1.5 P min(ST/S, 6.5)",
                $"1.5 × {design} × min({ST}/{S}, 6.5)",
                TestPressure.Hydrostatic(ask.DesignPressure, ask.StressAtTest, ask.StressAtDesign),
                Hydro
            ),
            TestKind.Pneumatic => Asked("1.1 P", $"1.1 × {design}", TestPressure.Pneumatic(ask.DesignPressure), Gas),
            TestKind.PowerHydrostatic => Asked(
                "1.5 P",
                $"1.5 × {design}",
                TestPressure.PowerHydrostatic(ask.DesignPressure),
                Power
            ),
            TestKind.PowerPneumatic => Asked(
                "1.2 P",
                $"1.2 × {design}",
                TestPressure.PowerPneumatic(ask.DesignPressure),
                Power
            ),
            TestKind.InitialService => Asked("P_operating", $"{operating}", ask.OperatingPressure, Initial),
            TestKind.SensitiveLeak => Asked(
                "min(1.05, 0.25 P)",
                $"min(1.05, 0.25 × {design})",
                TestPressure.SensitiveLeak(ask.DesignPressure),
                Sensitive
            ),
            _ => throw new ImpossibleInputException("kind", $"{ask.Kind}", "one of the kinds of test"),
        };
    }

    private double Asked(string formula, FormattableString numbers, Pressure pressure, Clause source) =>
        working.Step("P_code", "pressure the code asks for", formula, numbers, pressure.Bars, "bar", source);

    private List<TestCap> Caps()
    {
        var caps = new List<TestCap>();
        if (ask.YieldStrength is { } yield)
        {
            var atYield = TestPressure.AtYield(yield, ask.LeastWall, ask.OutsideDiameter);
            const string Words = "0.9 of the pressure at which the least wall yields";
            working.Step(
                "cap",
                Words,
                "0.9 × 10 × 2 Sy t/D",
                $"0.9 × 10 × 2 × {yield.Megapascals} × {ask.LeastWall.Millimeters}/{ask.OutsideDiameter.Millimeters}",
                atYield.Bars * 0.9,
                "bar",
                Hydro
            );
            caps.Add(new("yield", Words, atYield * 0.9));
        }
        else
        {
            findings.Add(Unknown("yield-unknown", "No yield strength: what the wall holds cannot be capped by yield."));
        }
        Add(caps, "pipe", "safe pressure of the damaged pipe", "pipeHoldsBar", ask.PipeHolds);
        Add(caps, "repair", "rating of the repair", "repairRatingBar", ask.RepairRating);
        Add(caps, "component", "weakest other part", "weakestComponentBar", ask.WeakestComponent);
        if (ask.PipeHolds is null)
        {
            findings.Add(
                Unknown(
                    "strength-not-assessed",
                    "No remaining-strength assessment: the cap rests on yield and ratings alone."
                )
            );
        }
        return caps.Count > 0
            ? caps
            : throw new ImpossibleInputException(
                "yieldStrengthMpa",
                "missing",
                "a yield strength, a safe pressure of the pipe or a rating, so that the test can be capped"
            );
    }

    private void Add(List<TestCap> caps, string code, string words, string field, Pressure? pressure)
    {
        if (pressure is { } given)
        {
            var bar = working.Given("cap", words, Require.Between(field, given.Bars, 0, 100_000), "bar", Given);
            caps.Add(new(code, words, Pressure.FromBars(bar)));
        }
    }

    private void Judge(double code, TestCap cap, bool serviceOnly)
    {
        findings.Add(
            new(
                "code-pressure",
                serviceOnly ? Severity.Fail : Severity.Pass,
                Invariant($"The code asks for {code:G4} bar; {cap.Words} allows {cap.Pressure.Bars:G4} bar.")
                    + (
                        serviceOnly
                            ? " The record must say \"leak test at service pressure only\" and who accepted it."
                            : ""
                    ),
                code,
                cap.Pressure.Bars,
                "bar",
                Own
            )
        );
        var holds = operating <= cap.Pressure.Bars;
        findings.Add(
            new(
                "service-pressure-held",
                holds ? Severity.Pass : Severity.Fail,
                Invariant($"Service pressure {operating:G4} bar, {cap.Words} allows {cap.Pressure.Bars:G4} bar.")
                    + (holds ? "" : " The line may not go back to this pressure."),
                operating,
                cap.Pressure.Bars,
                "bar",
                Own,
                LimitKind.Absolute
            )
        );
    }

    private void Category()
    {
        if (ask.Kind == TestKind.InitialService && ask.Category != ServiceCategory.D)
        {
            findings.Add(
                new(
                    "initial-service-category",
                    Severity.Fail,
                    "An initial service leak test is for Category D fluid only.",
                    null,
                    null,
                    null,
                    Initial
                )
            );
        }
    }

    private void GasCeiling(double test)
    {
        if (ask.Kind == TestKind.Pneumatic)
        {
            var ceiling = 1.33 * design;
            findings.Add(
                new(
                    "pneumatic-ceiling",
                    test <= ceiling ? Severity.Pass : Severity.Fail,
                    Invariant($"Pneumatic test {test:G4} bar, at most {ceiling:G4} bar (1.33 times design)."),
                    test,
                    ceiling,
                    "bar",
                    Gas
                )
            );
        }
    }

    private Energy? Energy(double test)
    {
        if (!gas)
        {
            return null;
        }
        var absolute = Pressure.FromBars(test + AtmosphereBar);
        var energy = StoredEnergy.Of(absolute, ask.Volume!.Value);
        working.Step(
            "E",
            "energy of the gas",
            "2.5 Pt V (1 − (Pa/Pt)^(2/7))",
            $"2.5 × {absolute.Pascals} × {ask.Volume.Value.CubicMeters} × (1 − (101325/{absolute.Pascals})^(2/7))",
            energy.Joules,
            "J",
            Energetic
        );
        var kg = working.Step(
            "W",
            "the same energy in TNT",
            "E/4 266 920",
            $"{energy.Joules}/4266920",
            StoredEnergy.Tnt(energy).Kilograms,
            "kg",
            Energetic
        );
        working.Step(
            "R",
            "least distance of people",
            "30 m to 135.5 MJ, 60 m to 271 MJ, above 20 (2 W)^(1/3)",
            energy.Megajoules > 271 ? $"20 × (2 × {kg})^(1/3)" : (FormattableString)$"{energy.Megajoules} MJ",
            StoredEnergy.StandOff(energy).Meters,
            "m",
            Energetic
        );
        return energy;
    }

    private List<TestStep> Steps(double test)
    {
        var steps = new List<TestStep>();
        if (gas)
        {
            var first = Math.Min(0.5 * test, FirstGasLookBar);
            steps.Add(new(Pressure.FromBars(first), 10, "first look at joints and repair"));
        }
        foreach (var share in new[] { 0.25, 0.5, 0.75, 1.0 })
        {
            var pressure = share * test;
            if (steps.Count == 0 || pressure > steps[^1].Pressure.Bars)
            {
                steps.Add(new(Pressure.FromBars(pressure), 10, Invariant($"{share:P0}: watch from a distance")));
            }
        }
        if (ask.Kind == TestKind.Pneumatic && test > design)
        {
            steps.Add(new(Pressure.FromBars(design), 0, "back to design pressure, then examine all joints"));
        }
        else
        {
            steps.Add(new(Pressure.FromBars(test), 0, "examine all joints and the repair"));
        }
        return steps;
    }

    private static string[] Cautions(Energy? energy)
    {
        string staged =
            "Raise the pressure in the stages shown and keep everybody away while it rises. Nobody tightens anything under pressure.";
        return energy is { } e
            ?
            [
                Invariant(
                    $"Compressed gas: {e.Megajoules:G3} MJ. Nobody nearer than {StoredEnergy.StandOff(e).Meters:F0} m while the test pressure is on."
                ),
                staged,
            ]
            : [staged];
    }

    private static Finding Unknown(string code, string words) =>
        new(code, Severity.Watch, words, null, null, null, Own);
}
