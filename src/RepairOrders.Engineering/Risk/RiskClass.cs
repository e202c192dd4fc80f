using RepairOrders.Engineering.Methods;

namespace RepairOrders.Engineering.Risk;

/// <summary>Risk class of a temporary repair; the greater value is the worse class.</summary>
public enum RiskClass
{
    /// <summary>Least risk.</summary>
    D = 1,

    /// <summary>Low.</summary>
    C = 2,

    /// <summary>High.</summary>
    B = 3,

    /// <summary>Highest.</summary>
    A = 4,
}

/// <summary>A class with the scores and the sentences that led to it.</summary>
/// <param name="Class">The class.</param>
/// <param name="Consequence">Consequence score C, 1 to 5.</param>
/// <param name="Likelihood">Likelihood score L, 1 to 5.</param>
/// <param name="Reasons">Why, one sentence a step, in the order they were applied.</param>
public sealed record RiskRank(RiskClass Class, int Consequence, int Likelihood, IReadOnlyList<string> Reasons)
{
    /// <summary>The hand calculation: both scores, the cell of the matrix, and what raised the class.</summary>
    public IReadOnlyList<WorkingStep> Working { get; init; } = [];
}

/// <summary>What may lift a class above the matrix when the design is signed.</summary>
/// <param name="LiveRepairsOnSection">Live temporary repairs on the isolatable section, this one counted.</param>
/// <param name="NoPermanentFixReference">No job or shutdown line will end it; only an imported repair may lack one.</param>
public sealed record Standing(int LiveRepairsOnSection = 1, bool NoPermanentFixReference = false);

/// <summary>What time has done to a repair in service: what the class today knows beyond the signed one.</summary>
/// <param name="MissedLooks">Looks in a row that were due and not made.</param>
/// <param name="LifeUsed">Share of the approved life gone, 0 at the start and 1 at the end date.</param>
/// <param name="PastEndDate">The end date has passed.</param>
/// <param name="RecordScorePercent">Share of the readings, batches and tests on record, %; nothing where it is not scored.</param>
/// <param name="ReinjectionsSince">Re-injections since the class was signed.</param>
/// <param name="EarlierLeaksSince">Leaks on the same line since the class was signed.</param>
public sealed record Ageing(
    int MissedLooks,
    double LifeUsed,
    bool PastEndDate,
    double? RecordScorePercent = null,
    int ReinjectionsSince = 0,
    int EarlierLeaksSince = 0
);

/// <summary>
/// Class from consequence and likelihood. The matrix is uneven toward consequence, as API RP 580 and 581 allow; its cells, the
/// raisers and the overrides are rules of our own that a site may change with two signatures.
/// </summary>
public static class RiskRanking
{
    private static readonly Clause Own = new("risk matrix, uneven toward consequence", "", Provenance.OwnRule);

    private const string Matrix = "BBAAA CBBAA CCBBA DCCBB DDDCC";

    /// <summary>The cell of the class matrix.</summary>
    /// <param name="consequence">Consequence score C, 1 to 5.</param>
    /// <param name="likelihood">Likelihood score L, 1 to 5.</param>
    /// <returns>The class.</returns>
    /// <exception cref="ImpossibleInputException">A score outside 1 to 5.</exception>
    public static RiskClass FromMatrix(int consequence, int likelihood)
    {
        Require.Between("consequence", consequence, 1, 5);
        Require.Between("likelihood", likelihood, 1, 5);
        return Enum.Parse<RiskClass>(Matrix.AsSpan((5 - consequence) * 6 + likelihood - 1, 1));
    }

    /// <summary>The class a design is signed under: everything but age.</summary>
    /// <param name="consequence">What a leak would do.</param>
    /// <param name="likelihood">How likely it is.</param>
    /// <param name="standing">Neighbours on the section and the permanent fix.</param>
    /// <returns>The class with its reasons.</returns>
    /// <exception cref="ImpossibleInputException">A count or a ratio no repair can have.</exception>
    public static RiskRank ToSign(ConsequenceFacts consequence, LikelihoodFacts likelihood, Standing standing)
    {
        ArgumentNullException.ThrowIfNull(standing);
        var c = Consequence.Score(consequence);
        var l = Likelihood.Score(likelihood);
        return new Ranking([.. c.Reasons, .. l.Reasons], [.. c.Working, .. l.Working]).Rank(
            c.Value,
            l.Value,
            standing,
            pastEndDate: false
        );
    }

    /// <summary>The class until somebody has assessed: that of the consequence with likelihood 5.</summary>
    /// <param name="consequence">What a leak would do.</param>
    /// <returns>The class with its reasons.</returns>
    public static RiskRank UntilAssessed(ConsequenceFacts consequence)
    {
        var c = Consequence.Score(consequence);
        var ranking = new Ranking([.. c.Reasons, "Likelihood 5: nobody has assessed the pipe yet."], c.Working);
        ranking.Working.Given("L", "likelihood: nobody has assessed the pipe yet", 5, "-", Own);
        return ranking.Rank(c.Value, 5, new Standing(), pastEndDate: false);
    }

    /// <summary>The class as it reads now. It is never below the signed one.</summary>
    /// <param name="asSigned">The class the design was signed under.</param>
    /// <param name="ageing">What time has done since.</param>
    /// <param name="standing">Neighbours and permanent fix as they are now.</param>
    /// <returns>The class today; its reasons are those of the signed class followed by what age added.</returns>
    /// <exception cref="ImpossibleInputException">A count below 0, or a share of life that is not finite.</exception>
    public static RiskRank Today(RiskRank asSigned, Ageing ageing, Standing standing)
    {
        ArgumentNullException.ThrowIfNull(asSigned);
        ArgumentNullException.ThrowIfNull(standing);
        var age = Likelihood.OfAge(ageing);
        var l = Math.Clamp(asSigned.Likelihood + age.Value, 1, 5);
        var ranking = new Ranking([.. asSigned.Reasons, .. age.Reasons], [.. asSigned.Working, .. age.Working]);
        ranking.Working.Step(
            "L today",
            "likelihood score with its age",
            "Σ ΔL added to L as signed, 5 at most",
            $"{asSigned.Likelihood} + {age.Value}",
            l,
            "-",
            Own
        );
        var today = ranking.Rank(asSigned.Consequence, l, standing, ageing.PastEndDate);
        return today.Class >= asSigned.Class ? today : today with { Class = asSigned.Class };
    }

    // One class from its cell upward, with the sentences and the working that lead there.
    private sealed class Ranking
    {
        private readonly List<string> reasons;

        public Ranking(IEnumerable<string> reasons, IEnumerable<WorkingStep> working)
        {
            this.reasons = [.. reasons];
            Working.Include(working);
        }

        public Working Working { get; } = new();

        public RiskRank Rank(int c, int l, Standing standing, bool pastEndDate)
        {
            Require.Between("liveRepairsOnSection", standing.LiveRepairsOnSection, 0, 10_000);
            var cell = FromMatrix(c, l);
            reasons.Add($"Consequence {c} and likelihood {l} give class {cell}.");
            Note($"class {cell}: cell of the matrix", "matrix(C, L)", $"matrix({c}, {l})", cell);
            var raised = cell;
            if (pastEndDate)
                raised = Raise(raised, "The end date has passed");
            if (standing.NoPermanentFixReference)
                raised = Raise(raised, "No permanent fix is on order");
            if (standing.LiveRepairsOnSection >= 3)
                raised = Raise(raised, $"{standing.LiveRepairsOnSection} live repairs stand on one isolatable section");
            if (c == 5 && raised < RiskClass.B)
                raised = RiskClass.B;
            return new RiskRank(raised, c, l, reasons) { Working = Working };
        }

        private RiskClass Raise(RiskClass from, string why)
        {
            var to = from == RiskClass.A ? RiskClass.A : from + 1;
            reasons.Add(to == from ? $"{why}: the class is {from} already." : $"{why}: class {from} becomes {to}.");
            Note($"class {to}: {why.ToLowerInvariant()}", "min(4, class + 1)", $"min(4, {(int)from} + 1)", to);
            return to;
        }

        private void Note(string words, string formula, FormattableString numbers, RiskClass to) =>
            Working.Step("class", words, formula, numbers, (int)to, "D 1, C 2, B 3, A 4", Own);
    }
}
