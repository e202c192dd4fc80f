using System.Globalization;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>A wall as measured, and what will be lost from it.</summary>
/// <param name="Wall">Least measured wall.</param>
/// <param name="ExpectedLoss">Loss expected before the next inspection, counted once.</param>
/// <param name="MechanicalAllowance">Threads and grooves.</param>
/// <param name="StrengthToday">Take no future loss off: a labelled figure of today's strength, never an operating limit.</param>
public sealed record MeasuredWall(
    Length Wall,
    Length ExpectedLoss,
    Length MechanicalAllowance,
    bool StrengthToday = false
);

/// <summary>The pressure a measured wall holds.</summary>
/// <param name="Mawp">Maximum allowable working pressure, gauge; nothing where the reading is refused.</param>
/// <param name="WallThatCounts">The measured wall less twice the expected loss and the mechanical allowance.</param>
/// <param name="StrengthToday">No future loss was taken off.</param>
public sealed record HeldPressure(Pressure? Mawp, Length WallThatCounts, bool StrengthToday);

public static partial class Mawp
{
    // Less than this is no wall: it holds nothing.
    private const double LeastLeft = 0.001;

    private static readonly Clause TwiceTheLoss = new("API 570", "7.2");
    private static readonly Clause PipeRecord = new("the pipe's record", "", Provenance.Entered);
    private static readonly Clause Measured = new("thickness reading", "", Provenance.Entered);
    private static readonly Clause Implausible = new(
        "a reading more than 1.25 times nominal is taken again",
        "",
        Provenance.OwnRule
    );

    /// <summary>Pressure a measured wall holds until the next inspection, by the duty's code with the loss of API 570.</summary>
    /// <remarks>
    /// <para>Formula: tc = t − 2 loss − c; then <see cref="B313"/> (ASME B31.3, and with its S E ASME B31.1), <see cref="Pipeline"/> (ASME B31.4, B31.8) or <see cref="Barlow"/> with S E, each of tc.</para>
    /// <para>Symbols: tc wall that counts, mm; t measured wall, mm; loss expected before the next inspection, mm; c mechanical allowance, mm; others those of the formulae.</para>
    /// <para>Validity: those of the formulae; outside them, and for a reading above 1.25 × nominal, no pressure is given. With <c>StrengthToday</c> no loss is taken off and the answer is no operating limit.</para>
    /// <para>Reference: ASME B31.3-2012, 304.1.2, eq. (3a); ASME B31.1, 104.1.2 (from memory); ASME B31.4, 403.2; ASME B31.8, 841.1.1; API 570, 7.2.</para>
    /// </remarks>
    /// <param name="pipe">The pipe.</param>
    /// <param name="duty">Code, pressure and temperature.</param>
    /// <param name="measured">The measured wall and its losses.</param>
    /// <returns>The pressure held.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 219.075 mm, 4 mm measured, no loss, S 20 000 psi, E = W = 1: 741 psi = 51.1 bar.</example>
    public static Calculated<HeldPressure> Assess(Pipe pipe, WallDuty duty, MeasuredWall measured)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        ArgumentNullException.ThrowIfNull(duty);
        ArgumentNullException.ThrowIfNull(measured);
        var working = new Working();
        var D = working.Given(
            "D",
            "outside diameter",
            Shell.Of(pipe.OutsideDiameter, measured.Wall, "measuredWallMm").D,
            "mm",
            PipeRecord
        );
        var tc = WallThatCounts(measured, working);
        var findings = new List<Finding> { Plausible(pipe, measured) };
        var mawp = findings.Exists(f => f.Blocks) ? (Pressure?)null : Held(pipe, duty, D, tc, working, findings);
        if (mawp is { } held)
        {
            findings.Add(Enough(held, duty));
            findings.Add(Kind(measured));
        }
        return new(new(mawp, Length.FromMillimeters(tc), measured.StrengthToday), working, findings, []);
    }

    private static double WallThatCounts(MeasuredWall measured, Working working)
    {
        var t = working.Given("t", "measured wall", measured.Wall.Millimeters, "mm", Measured);
        var loss = working.Given(
            "loss",
            "expected before the next inspection",
            Take.Extent("expectedLossMm", measured.ExpectedLoss),
            "mm",
            Measured
        );
        var c = working.Given(
            "c",
            "mechanical allowance",
            Take.Extent("mechanicalAllowanceMm", measured.MechanicalAllowance),
            "mm",
            PipeRecord
        );
        var times = measured.StrengthToday ? 0 : 2;
        var left = Math.Max(0, t - times * loss - c);
        return working.Step(
            "tc",
            "wall that counts",
            measured.StrengthToday ? "t − c" : "t − 2 loss − c",
            $"{t} − {times} × {loss} − {c}",
            left,
            "mm",
            TwiceTheLoss
        );
    }

    private static Pressure? Held(
        Pipe pipe,
        WallDuty duty,
        double D,
        double tc,
        Working working,
        List<Finding> findings
    )
    {
        if (WallFormula.Of(pipe, duty, working, findings) is not { } formula)
            return null;
        findings.AddRange(WallFormula.Limits(duty));
        var held = formula.NoteHeld(working, D, tc, tc < LeastLeft ? 0 : formula.Held(D, tc));
        findings.Add(formula.ThinEnough(tc, D, held));
        return findings.Exists(f => f.Blocks) ? null
            : held > 0 ? Pressure.FromMegapascals(held)
            : Pressure.Zero;
    }

    private static Finding Plausible(Pipe pipe, MeasuredWall measured)
    {
        var limit = 1.25 * pipe.NominalWall.Millimeters;
        var believed = measured.Wall.Millimeters <= limit;
        var words = string.Create(
            CultureInfo.InvariantCulture,
            $"Measured {measured.Wall.Millimeters:0.00} mm against 1.25 × nominal = {limit:0.00} mm{(believed ? "." : ": take the reading again, or correct the nominal wall.")}"
        );
        return new(
            "measured-wall-plausible",
            believed ? Severity.Pass : Severity.Fail,
            words,
            measured.Wall.Millimeters,
            limit,
            "mm",
            Implausible,
            LimitKind.Absolute
        );
    }

    private static Finding Enough(Pressure held, WallDuty duty)
    {
        var (has, needs) = (held.Bars, duty.DesignPressure.Bars);
        var words = string.Create(
            CultureInfo.InvariantCulture,
            $"The wall holds {has:0.0} bar against a design pressure of {needs:0.0} bar."
        );
        return new(
            "mawp-against-design",
            has >= needs ? Severity.Pass : Severity.Fail,
            words,
            has,
            needs,
            "bar",
            PipeRecord
        );
    }

    private static Finding Kind(MeasuredWall measured) =>
        measured.StrengthToday
            ? new(
                "strength-today-only",
                Severity.Watch,
                "Today's strength: no future loss is taken off, so it sets no operating limit.",
                null,
                null,
                null,
                TwiceTheLoss
            )
            : new(
                "loss-counted-twice",
                Severity.Pass,
                "Twice the loss expected before the next inspection is taken off.",
                measured.ExpectedLoss.Millimeters,
                null,
                "mm",
                TwiceTheLoss
            );
}
