using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>What a leak rate is wanted for. It decides which way is safe.</summary>
public enum LeakPurpose
{
    /// <summary>Exposure, cloud, flooding, jet: never too small.</summary>
    Exposure,

    /// <summary>Loss and cost: the likely value.</summary>
    Cost,
}

/// <summary>What a price is for.</summary>
public enum PricedBy
{
    /// <summary>A tonne.</summary>
    Tonne,

    /// <summary>A cubic metre; of a gas, free gas; of steam, the water it was.</summary>
    CubicMetre,
}

/// <summary>What the fluid costs.</summary>
/// <param name="Price">Price, currency for a tonne or a cubic metre. Of steam it holds the fuel already.</param>
/// <param name="By">What it is for.</param>
public sealed record LeakPrice(double Price, PricedBy By);

/// <summary>A hole and the pressures on both sides of it.</summary>
/// <param name="Hole">Area of the hole; the largest credible one for exposure.</param>
/// <param name="InsideGauge">Pressure inside, gauge.</param>
/// <param name="Purpose">What the rate is for.</param>
/// <param name="OutsideGauge">Pressure outside, gauge; nothing for open air.</param>
/// <param name="AtmosphereAbs">Atmospheric pressure, absolute; nothing for 1.01325 bar.</param>
/// <param name="DischargeCoefficient">Discharge coefficient, -; nothing for the purpose's default.</param>
/// <param name="HoursAYear">Hours a year the line is under pressure, up to 8784; nothing for 8760.</param>
/// <param name="Price">What the fluid costs; nothing where no cost is wanted.</param>
public sealed record LeakConditions(
    Area Hole,
    Pressure InsideGauge,
    LeakPurpose Purpose,
    Pressure? OutsideGauge = null,
    Pressure? AtmosphereAbs = null,
    double? DischargeCoefficient = null,
    Duration? HoursAYear = null,
    LeakPrice? Price = null
);

/// <summary>A leak, and what it comes to in a year.</summary>
/// <param name="MassFlow">Mass flow.</param>
/// <param name="VolumeFlow">Volume flow: of a gas, free gas at the line's temperature and atmospheric pressure; of steam, the water it was.</param>
/// <param name="MassAYear">Mass a year.</param>
/// <param name="VolumeAYear">Volume a year.</param>
/// <param name="CostAYear">Cost a year, in the currency of the price; nothing where no price was given.</param>
/// <param name="DischargeCoefficient">The discharge coefficient used, -.</param>
/// <param name="Choked">A gas or steam leaves at the speed of sound.</param>
public sealed record LeakAnswer(
    MassFlow MassFlow,
    VolumeFlow VolumeFlow,
    Mass MassAYear,
    Volume VolumeAYear,
    double? CostAYear,
    double DischargeCoefficient,
    bool Choked
);

/// <summary>Leak rate of a liquid, a gas or steam, with mass, volume and cost a year. For risk and loss, never for design.</summary>
public static class Leak
{
    // Water at 15 °C, EOS-80: what a tonne of steam was before the boiler.
    private const double MakeUpWater = 999.1;

    private static readonly Clause Torricelli = new("Torricelli with a discharge coefficient", "m = Cd·A·√(2·ρ·Δp)");
    private static readonly Clause Nozzle = new("isentropic nozzle flow", "TNO Yellow Book CPR 14E, 2.5.2.3");
    private static readonly Clause Napier = new("Napier's rule", "W = 51.43·A·P·Cd");
    private static readonly Clause Given = new("given", "", Provenance.Entered);
    private static readonly Clause Arithmetic = new("arithmetic", "", Provenance.Derived);

    /// <summary>Leak of a liquid.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="LiquidLeak.Flow"/>; Q = m/ρ.</para>
    /// <para>Symbols: those of <see cref="LiquidLeak.Flow"/>; Q volume flow, m³/s.</para>
    /// <para>Validity: turbulent and not flashing; both are tested where viscosity and vapour pressure are known, and flagged.</para>
    /// <para>Reference: see <see cref="LiquidLeak.Flow"/>. Default Cd 0.8 for exposure (own rule), 0.62 for cost (sharp edge).</para>
    /// </remarks>
    /// <param name="conditions">The hole and the pressures.</param>
    /// <param name="liquid">The liquid.</param>
    /// <returns>Flows and yearly loss, with flashing, a small Reynolds number and defaults as findings.</returns>
    /// <exception cref="ImpossibleInputException">A value that cannot be.</exception>
    /// <example>10 mm round, 20 bar, water of 1000 kg/m³, Cd 0.61: 3.0300 kg/s.</example>
    public static Calculated<LeakAnswer> OfLiquid(LeakConditions conditions, Liquid liquid)
    {
        ArgumentNullException.ThrowIfNull(liquid);
        var leak = new Case(conditions, 0.8, 0.62);
        var rho = Require.Between("densityKgM3", liquid.Density.KilogramsPerCubicMeter, 1, 30_000);
        var working = leak.Start();
        working.Given("ρ", "density of " + liquid.Name, rho, "kg/m³", liquid.Source);
        var dp = working.Step(
            "Δp",
            "pressure drop",
            "P0 − Pb",
            $"{leak.P0} − {leak.Pb}",
            leak.P0 - leak.Pb,
            "bar",
            Arithmetic
        );
        var m = working.Step(
            "m",
            "mass flow",
            "Cd·A·√(2·ρ·Δp)",
            $"{leak.Cd} × {leak.A} × 10⁻⁶ × √(2 × {rho} × {Math.Max(0, dp)} × 10⁵)",
            LiquidLeak.Flow(conditions.Hole, Pressure.FromBars(dp), liquid.Density, leak.Cd).KilogramsPerSecond,
            "kg/s",
            Torricelli
        );
        var Q = working.Step("Q", "volume flow", "m/ρ", $"{m}/{rho}", m / rho, "m³/s", Arithmetic);
        return leak.Answer(working, m, Q, false, [.. OfFlashing(leak, liquid), .. OfFriction(conditions, liquid, m)]);
    }

    /// <summary>Leak of a gas, choked or not.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="GasLeak.Flow"/> and <see cref="GasLeak.FreeVolume"/>.</para>
    /// <para>Symbols: those of <see cref="GasLeak.Flow"/>.</para>
    /// <para>Validity: that of <see cref="GasLeak.Flow"/>; an ideal gas above 20 bar is flagged.</para>
    /// <para>Reference: see <see cref="GasLeak.Flow"/>. Default Cd 1.0 for exposure (own rule), 0.65 for cost (note of a handbook table).</para>
    /// </remarks>
    /// <param name="conditions">The hole and the pressures.</param>
    /// <param name="temperature">Temperature inside.</param>
    /// <param name="gas">The gas.</param>
    /// <returns>Flows and yearly loss, with defaults as findings.</returns>
    /// <exception cref="ImpossibleInputException">A value that cannot be.</exception>
    /// <example>Air, 1/4 in, 100 psig, 70 °F, 14.7 psia, Cd 1: 104.2 cubic feet of free air a minute (table: 104).</example>
    public static Calculated<LeakAnswer> OfGas(LeakConditions conditions, Temperature temperature, Gas gas)
    {
        ArgumentNullException.ThrowIfNull(gas);
        var leak = new Case(conditions, 1.0, 0.65);
        var flow = GasLeak.Flow(
            conditions.Hole,
            Pressure.FromBars(leak.P0),
            Pressure.FromBars(leak.Pb),
            temperature,
            gas,
            leak.Cd
        );
        var working = leak.Start();
        var k = working.Given("k", "ratio of specific heats of " + gas.Name, gas.HeatRatio, "-", gas.Source);
        var R = working.Step(
            "R",
            "gas constant",
            "8.314463/M",
            $"8.314463/{gas.MolarMass.KilogramsPerMole}",
            GasLeak.SpecificConstant(gas),
            "J/(kg K)",
            gas.Source
        );
        var T = working.Given("T", "temperature inside", temperature.DegreesCelsius + 273.15, "K", Given);
        var Z = working.Given("Z", "compressibility", gas.Compressibility, "-", gas.Source);
        var rc = working.Step(
            "rc",
            "critical ratio",
            "(2/(k + 1))^(k/(k − 1))",
            $"(2/({k} + 1))^({k}/({k} − 1))",
            GasLeak.CriticalRatio(k),
            "-",
            Nozzle
        );
        var r = leak.P0 > 0 ? leak.Pb / leak.P0 : 1;
        working.Step("r", "pressure ratio", "Pb/P0", $"{leak.Pb}/{leak.P0}", r, "-", Arithmetic);
        var choked = r <= rc && leak.P0 > leak.Pb;
        var m = working.Step(
            "m",
            choked ? "mass flow, choked" : "mass flow, not choked",
            choked
                ? "Cd·A·P0·√(k/(Z·R·T))·(2/(k + 1))^((k + 1)/(2(k − 1)))"
                : "Cd·A·P0·√(2k/((k − 1)·Z·R·T)·(r^(2/k) − r^((k + 1)/k)))",
            choked
                ? $"{leak.Cd} × {leak.A} × 10⁻⁶ × {leak.P0} × 10⁵ × √({k}/({Z} × {R} × {T})) × (2/({k} + 1))^(({k} + 1)/(2({k} − 1)))"
                : (FormattableString)
                    $"{leak.Cd} × {leak.A} × 10⁻⁶ × {leak.P0} × 10⁵ × √(2 × {k}/(({k} − 1) × {Z} × {R} × {T}) × ({r}^(2/{k}) − {r}^(({k} + 1)/{k})))",
            flow.KilogramsPerSecond,
            "kg/s",
            Nozzle
        );
        var Q = working.Step(
            "Q",
            "free gas at the line's temperature",
            "m·R·T/Pa",
            $"{m} × {R} × {T}/({leak.Pa} × 10⁵)",
            GasLeak.FreeVolume(flow, gas, Pressure.FromBars(leak.Pa), temperature).CubicMetersPerSecond,
            "m³/s",
            Arithmetic
        );
        return leak.Answer(working, m, Q, choked, [.. OfIdealGas(leak, gas)]);
    }

    /// <summary>Leak of dry saturated steam.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="SteamLeak.Flow"/>.</para>
    /// <para>Symbols: those of <see cref="SteamLeak.Flow"/>.</para>
    /// <para>Validity: dry saturated steam, outside/inside absolute pressure ≤ 0.577; above it the answer is an upper bound and flagged. Wet
    /// steam and condensate are not covered.</para>
    /// <para>Reference: see <see cref="SteamLeak.Flow"/>. Default Cd 1.0 for exposure (own rule), 0.60 for cost (engineering chart).</para>
    /// </remarks>
    /// <param name="conditions">The hole and the pressures.</param>
    /// <returns>Flows and yearly loss, the volume as the water it was, with defaults as findings.</returns>
    /// <exception cref="ImpossibleInputException">A value that cannot be.</exception>
    /// <example>1/8 in, 150 psig, atmosphere 14.7 psia, Cd 0.729: 75.8 lb/h.</example>
    public static Calculated<LeakAnswer> OfSteam(LeakConditions conditions)
    {
        var leak = new Case(conditions, 1.0, 0.60);
        var flow = SteamLeak.Flow(conditions.Hole, Pressure.FromBars(leak.P0), Pressure.FromBars(leak.Pb), leak.Cd);
        var working = leak.Start();
        var A = working.Step(
            "A'",
            "area in square inches",
            "A/645.16",
            $"{leak.A}/645.16",
            leak.A / 645.16,
            "in²",
            Arithmetic
        );
        var P = working.Step(
            "P",
            "inside pressure",
            "P0 × 14.50377",
            $"{leak.P0} × 14.50377",
            leak.P0 * 14.503773773,
            "psi abs",
            Arithmetic
        );
        working.Step(
            "W",
            "mass flow",
            "51.43·A'·P·Cd",
            $"51.43 × {A} × {P} × {leak.Cd}",
            flow.PoundsPerHour,
            "lb/h",
            Napier
        );
        var m = working.Step(
            "m",
            "mass flow",
            "W × 0.45359237/3600",
            $"{flow.PoundsPerHour} × 0.45359237/3600",
            flow.KilogramsPerSecond,
            "kg/s",
            Arithmetic
        );
        var Q = working.Step("Q", "water it was", "m/999.1", $"{m}/999.1", m / MakeUpWater, "m³/s", Arithmetic);
        var choked = leak.P0 > leak.Pb && leak.Pb <= SteamLeak.CriticalRatio * leak.P0;
        return leak.Answer(working, m, Q, choked, [OfNapier(leak)]);
    }

    private static IEnumerable<Finding> OfFlashing(Case leak, Liquid liquid)
    {
        if (liquid.VapourPressureAbs is not { } vapour)
        {
            yield return new(
                "flashing-not-tested",
                Severity.Watch,
                "The vapour pressure is not known, so flashing could not be tested.",
                null,
                null,
                null,
                Torricelli
            );
            yield break;
        }

        var psat = Require.Between("vapourPressureBarAbs", vapour.Bars, 0, 1e4);
        if (psat > leak.P0)
            yield return new(
                "boils-inside",
                Severity.Fail,
                Text(
                    $"Vapour pressure {psat:G4} bar absolute is above the {leak.P0:G4} bar absolute inside: it boils in the pipe and is no liquid there."
                ),
                psat,
                leak.P0,
                "bar abs",
                Torricelli
            );
        yield return psat > leak.Pb
            ? new(
                "flashes",
                Severity.Watch,
                Text(
                    $"Vapour pressure {psat:G4} bar absolute is above the {leak.Pb:G4} bar absolute outside: the liquid flashes as it leaves. The rate is an upper bound, and part of it is vapour."
                ),
                psat,
                leak.Pb,
                "bar abs",
                Torricelli
            )
            : new(
                "does-not-flash",
                Severity.Pass,
                Text($"Vapour pressure {psat:G4} bar absolute is below the {leak.Pb:G4} bar absolute outside."),
                psat,
                leak.Pb,
                "bar abs",
                Torricelli
            );
    }

    private static IEnumerable<Finding> OfFriction(LeakConditions conditions, Liquid liquid, double m)
    {
        if (liquid.Viscosity is not { } viscosity || m == 0)
        {
            yield break;
        }

        var Re = LiquidLeak.Reynolds(MassFlow.FromKilogramsPerSecond(m), conditions.Hole, viscosity);
        if (Re < 10_000)
        {
            yield return new(
                "reynolds-low",
                Severity.Watch,
                Text(
                    $"Reynolds number {Re:G3} is below 10 000: the discharge coefficient of a sharp edge no longer holds, and a fine crack leaks less."
                ),
                Re,
                10_000,
                "-",
                new("texts of hydraulics", "", Provenance.FromMemory)
            );
        }
    }

    private static IEnumerable<Finding> OfIdealGas(Case leak, Gas gas)
    {
        if (gas.Compressibility == 1 && leak.P0 > 20)
        {
            yield return new(
                "ideal-gas-at-pressure",
                Severity.Watch,
                Text($"At {leak.P0:G4} bar absolute the gas is taken as ideal (Z = 1); give its compressibility."),
                leak.P0,
                20,
                "bar abs",
                Clause.Default("Z = 1")
            );
        }
    }

    private static Finding OfNapier(Case leak)
    {
        var r = leak.P0 > 0 ? leak.Pb / leak.P0 : 1;
        return r <= SteamLeak.CriticalRatio
            ? new(
                "choked",
                Severity.Pass,
                Text($"Pressure ratio {r:F3} is below 0.577: Napier's rule holds."),
                r,
                SteamLeak.CriticalRatio,
                "-",
                Napier
            )
            : new(
                "below-critical-pressure",
                Severity.Watch,
                Text($"Pressure ratio {r:F3} is above 0.577: Napier's rule gives an upper bound only."),
                r,
                SteamLeak.CriticalRatio,
                "-",
                Napier
            );
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // Pressures in bar, area in mm²: what all three kinds of leak share.
    private sealed class Case
    {
        private static readonly string[] Cautions =
        [
            "A rate of this kind ranks risk and loss; it is no basis of design, and the line must be able to feed the hole.",
            "Never feel for a leak by hand: a jet of steam, gas or oil that cannot be seen still cuts and burns.",
        ];

        private readonly LeakConditions conditions;
        private readonly List<Finding> findings = [];

        public Case(LeakConditions conditions, double exposure, double cost)
        {
            ArgumentNullException.ThrowIfNull(conditions);
            this.conditions = conditions;
            A = Leaks.Hole.SquareMetres(conditions.Hole) * 1e6;
            Pa = Require.Between("atmosphereBarAbs", conditions.AtmosphereAbs?.Bars ?? 1.01325, 0.3, 1.2);
            P0 = Pa + Require.Between("insidePressureBar", conditions.InsideGauge.Bars, -Pa, 1e4);
            Pb = Pa + Require.Between("outsidePressureBar", conditions.OutsideGauge?.Bars ?? 0, -Pa, 1e4);
            var usual = conditions.Purpose == LeakPurpose.Exposure ? exposure : cost;
            Cd = Leaks.Hole.Coefficient(conditions.DischargeCoefficient ?? usual);
            Hours = LeakCost.Hours(conditions.HoursAYear ?? Duration.FromHours(8760));
            Assume(usual);
        }

        public double A { get; }

        public double Pa { get; }

        public double P0 { get; }

        public double Pb { get; }

        public double Cd { get; }

        private double Hours { get; }

        public Working Start()
        {
            var working = new Working();
            working.Given("A", "area of the hole", A, "mm²", Leak.Given);
            working.Given("P0", "inside pressure", P0, "bar abs", Leak.Given);
            working.Given("Pb", "outside pressure", Pb, "bar abs", Leak.Given);
            working.Given("Cd", "discharge coefficient", Cd, "-", Leak.Given);
            return working;
        }

        public Calculated<LeakAnswer> Answer(
            Working working,
            double m,
            double Q,
            bool choked,
            IEnumerable<Finding> more
        )
        {
            var mass = working.Step(
                "M",
                "mass a year",
                "m·3.6·h",
                $"{m} × 3.6 × {Hours}",
                m * 3.6 * Hours,
                "t",
                Arithmetic
            );
            var volume = working.Step(
                "V",
                "volume a year",
                "Q·3600·h",
                $"{Q} × 3600 × {Hours}",
                Q * 3600 * Hours,
                "m³",
                Arithmetic
            );
            double? cost = conditions.Price is { } price ? Cost(working, price, mass, volume) : null;
            if (P0 <= Pb)
            {
                findings.Add(
                    new(
                        "no-outflow",
                        Severity.Watch,
                        "The pressure inside is not above that outside: nothing runs out, but something may run in.",
                        P0,
                        Pb,
                        "bar abs",
                        Arithmetic
                    )
                );
            }

            return new(
                new(
                    MassFlow.FromKilogramsPerSecond(m),
                    VolumeFlow.FromCubicMetersPerSecond(Q),
                    Mass.FromTonnes(mass),
                    Volume.FromCubicMeters(volume),
                    cost,
                    Cd,
                    choked
                ),
                working,
                [.. findings, .. more],
                Cautions
            );
        }

        private static double Cost(Working working, LeakPrice price, double mass, double volume)
        {
            var amount = price.By == PricedBy.Tonne ? mass : volume;
            var c = LeakCost.Price("price", price.Price);
            var symbol = price.By == PricedBy.Tonne ? "M" : "V";
            return working.Step(
                "C",
                "cost a year",
                symbol + "·c",
                $"{amount} × {c}",
                amount * c,
                "currency",
                Arithmetic
            );
        }

        private void Assume(double usual)
        {
            if (conditions.DischargeCoefficient is null)
            {
                var why = conditions.Purpose == LeakPurpose.Exposure ? "never too small" : "the likely value";
                findings.Add(
                    new(
                        "discharge-coefficient-default",
                        Severity.Watch,
                        Text($"Discharge coefficient {usual:G3} is taken: {why}."),
                        usual,
                        null,
                        "-",
                        Clause.Default(why)
                    )
                );
            }

            if (conditions.HoursAYear is null)
            {
                findings.Add(
                    new(
                        "hours-default",
                        Severity.Watch,
                        "The line is taken to be under pressure all year, 8760 h.",
                        8760,
                        LeakCost.HoursOfALeapYear,
                        "h",
                        Clause.Default("all year")
                    )
                );
            }

            if (conditions.Purpose == LeakPurpose.Exposure && Cd < usual)
            {
                findings.Add(
                    new(
                        "coefficient-low-for-exposure",
                        Severity.Watch,
                        Text($"Cd {Cd:G3} is below the {usual:G3} that is safe for exposure."),
                        Cd,
                        usual,
                        "-",
                        Clause.Default("never too small")
                    )
                );
            }
        }
    }
}
