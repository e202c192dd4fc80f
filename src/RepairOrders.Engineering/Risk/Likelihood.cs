using System.Globalization;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Risk;

/// <summary>How far the repair itself can be relied on.</summary>
public enum RepairStrength
{
    /// <summary>No method is chosen yet.</summary>
    NotChosen,

    /// <summary>Checked welded sleeve, box or spool that carries pressure and end load itself.</summary>
    FullStrength,

    /// <summary>Engineered clamp or wrap inside its limits, end load checked.</summary>
    Engineered,

    /// <summary>Engineered, but the damage goes on under it: a bolted clamp on active inside corrosion, or a wrap over a hole in hazardous duty.</summary>
    EngineeredOverActiveDamage,

    /// <summary>Soft patch, rubber and band, plug, any fix without a calculation.</summary>
    SealOnly,
}

/// <summary>How likely the repair is to leak or part.</summary>
/// <param name="Defect">The defect.</param>
/// <param name="RequiredWall">Wall the pipe must have for its loads.</param>
/// <param name="WallMeasured">The wall under and beside the repair was measured.</param>
/// <param name="Repair">How far the repair itself can be relied on.</param>
/// <param name="Cyclic">Marked vibration, cyclic duty or hammer.</param>
/// <param name="EarlierLeaks">Earlier leaks on the line within 24 months.</param>
/// <param name="Reinjections">Re-injections so far.</param>
/// <param name="RecordScorePercent">Share of the readings, batches and tests on record, %; nothing where it is not scored.</param>
public sealed record LikelihoodFacts(
    Defect Defect,
    Length RequiredWall,
    bool WallMeasured,
    RepairStrength Repair,
    bool Cyclic,
    int EarlierLeaks,
    int Reinjections,
    double? RecordScorePercent = null
);

/// <summary>Likelihood score, 1 to 5: from the condition of the metal, then adjusted. A rule of our own.</summary>
public static class Likelihood
{
    private static readonly Clause Own = new("likelihood score", "", Provenance.OwnRule);

    /// <summary>Scores the likelihood without age.</summary>
    /// <param name="facts">Condition, repair and history.</param>
    /// <returns>1 to 5 with reasons.</returns>
    /// <exception cref="ImpossibleInputException">A negative wall or count.</exception>
    public static Score Score(LikelihoodFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        Check(facts);
        var (start, why) = Start(facts);
        var adjust = Adjustments(facts).ToList();
        var working = new Working();
        Walls(working, facts);
        working.Given("L0", $"start: {why}", start, "-", Own);
        Note(working, adjust);
        var L = working.Step(
            "L",
            "likelihood score",
            "Σ ΔL added to L0, 1 at least and 5 at most",
            $"{start} + {adjust.Sum(a => a.By)}",
            Math.Clamp(start + adjust.Sum(a => a.By), 1, 5),
            "-",
            Own
        );
        return new Score((int)L, [$"Likelihood starts at {start}: {why}.", .. adjust.Select(Sentence)])
        {
            Working = working,
        };
    }

    /// <summary>Says how far a repair by this method can be relied on.</summary>
    /// <param name="method">The method's code; nothing while none is chosen.</param>
    /// <param name="defect">The defect.</param>
    /// <param name="service">The service.</param>
    /// <param name="calculated">The design was sized, holds, and the end load was checked.</param>
    /// <returns>The strength the likelihood is adjusted by.</returns>
    public static RepairStrength StrengthOf(string? method, Defect defect, Service service, bool calculated)
    {
        ArgumentNullException.ThrowIfNull(defect);
        ArgumentNullException.ThrowIfNull(service);
        if (method is null)
            return RepairStrength.NotChosen;
        if (!calculated || method is "plug" or "banded-patch")
            return RepairStrength.SealOnly;
        var activeInside = defect is { Side: DefectSide.Internal or DefectSide.Unknown, Growing: true };
        var hazardous = service.FluidGroup == 1 || service.Flammable || service.Toxic;
        return method switch
        {
            "welded-sleeve" or "section-replacement" => RepairStrength.FullStrength,
            "bolted-clamp" when activeInside => RepairStrength.EngineeredOverActiveDamage,
            "laminate-wrap" when defect.ThroughWall && hazardous => RepairStrength.EngineeredOverActiveDamage,
            _ => RepairStrength.Engineered,
        };
    }

    /// <summary>A second re-injection is a failure, not an upkeep: the metal under it is going.</summary>
    /// <param name="reinjections">Re-injections so far.</param>
    /// <returns>Whether the repair is to be treated as failed.</returns>
    public static bool TreatAsFailed(int reinjections) => reinjections >= 2;

    internal static Score OfAge(Ageing ageing)
    {
        ArgumentNullException.ThrowIfNull(ageing);
        Require.NotNegative("missedLooks", ageing.MissedLooks);
        Require.NotNegative("reinjectionsSince", ageing.ReinjectionsSince);
        Require.NotNegative("earlierLeaksSince", ageing.EarlierLeaksSince);
        Require.Finite("lifeUsed", ageing.LifeUsed);
        var adjust = AgeAdjustments(ageing).ToList();
        var working = new Working();
        Note(working, adjust);
        return new Score(adjust.Sum(a => a.By), [.. adjust.Select(Sentence)]) { Working = working };
    }

    private static void Walls(Working working, LikelihoodFacts f)
    {
        if (f.Defect.ThroughWall || !f.WallMeasured || f.RequiredWall <= Length.Zero)
            return;
        var (left, need) = (f.Defect.RemainingWall.Millimeters, f.RequiredWall.Millimeters);
        working.Step(
            "t/t_req",
            "wall left against required: 1 starts at 2, 0.7 at 3",
            "t/t_req",
            $"{left}/{need}",
            left / need,
            "-",
            Own
        );
    }

    private static void Note(Working working, IEnumerable<(int By, string Why)> adjust)
    {
        foreach (var (by, why) in adjust)
            working.Given("ΔL", why, by, "-", Own);
    }

    private static void Check(LikelihoodFacts f)
    {
        Require.NotNegative("requiredWallMm", f.RequiredWall.Millimeters);
        Require.NotNegative("remainingWallMm", f.Defect.RemainingWall.Millimeters);
        Require.NotNegative("soundWallBesideMm", f.Defect.SoundWallBeside.Millimeters);
        Require.NotNegative("earlierLeaks", f.EarlierLeaks);
        Require.NotNegative("reinjections", f.Reinjections);
    }

    private static (int Start, string Why) Start(LikelihoodFacts f)
    {
        var need = f.RequiredWall.Millimeters;
        var left = f.Defect.RemainingWall.Millimeters;
        var soundBeside = f.Defect.SoundWallBeside.Millimeters >= need;
        var figures = string.Create(CultureInfo.InvariantCulture, $"{left:0.0#} mm left of {need:0.0#} mm required");
        return f switch
        {
            { Defect.Kind: DefectKind.CrackLike } => (5, "crack-like"),
            { WallMeasured: false } => (5, "the wall could not be measured"),
            { Defect: { ThroughWall: true, Kind: DefectKind.Hole } } => (5, "a hole larger than a pinhole"),
            { Defect.ThroughWall: true } when soundBeside => (4, "a hole through the wall with sound metal beside it"),
            { Defect.ThroughWall: true } => (5, "through the wall with thin metal around"),
            _ when left < 0.7 * need => (4, figures),
            _ when left < need => (3, figures),
            { Defect.Growing: false } when left >= 1.25 * need => (1, $"{figures} and no growth"),
            _ => (2, figures),
        };
    }

    private static IEnumerable<(int By, string Why)> Adjustments(LikelihoodFacts f)
    {
        if (OfRepair(f.Repair) is { } repair)
            yield return repair;
        if (f.Defect.Cause == DefectCause.Unknown)
            yield return (1, "the cause is unknown");
        if (f.Cyclic)
            yield return (1, "marked vibration, cyclic duty or hammer");
        if (f.EarlierLeaks > 0)
            yield return (Math.Min(2, f.EarlierLeaks), "earlier leaks on the line within 24 months");
        if (f.Reinjections > 0)
            yield return (f.Reinjections, "re-injected");
        if (f.RecordScorePercent < 60)
            yield return (1, "less than 60 % of the readings, batches and tests are on record");
    }

    private static (int By, string Why)? OfRepair(RepairStrength strength) =>
        strength switch
        {
            RepairStrength.FullStrength => (-1, "the repair itself carries pressure and end load"),
            RepairStrength.EngineeredOverActiveDamage => (1, "the damage goes on under the repair"),
            RepairStrength.SealOnly => (2, "the repair seals only, or was not calculated"),
            _ => null,
        };

    private static IEnumerable<(int By, string Why)> AgeAdjustments(Ageing a)
    {
        if (a.MissedLooks > 0)
            yield return (Math.Min(2, a.MissedLooks), $"{a.MissedLooks} look(s) due and not made");
        if (a.PastEndDate || a.LifeUsed >= 1)
            yield return (2, "at or past the end date");
        else if (a.LifeUsed > 0.5)
            yield return (1, "more than half of the approved life is used");
        if (a.ReinjectionsSince > 0)
            yield return (a.ReinjectionsSince, "re-injected since it was signed");
        if (a.EarlierLeaksSince > 0)
            yield return (Math.Min(2, a.EarlierLeaksSince), "a further leak on the line");
        if (a.RecordScorePercent < 60)
            yield return (1, "less than 60 % of the readings, batches and tests are on record");
    }

    private static string Sentence((int By, string Why) a) =>
        string.Create(CultureInfo.InvariantCulture, $"Likelihood {a.By:+0;-0}: {a.Why}.");
}
