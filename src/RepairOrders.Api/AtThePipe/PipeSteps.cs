using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Contract;

namespace RepairOrders.Api.AtThePipe;

/// <summary>The steps of the work plan in turn, then tag and test, then into service; each with who may sign it now.</summary>
internal static class PipeSteps
{
    public static IReadOnlyList<PipeStep> Of(
        RepairOrder order,
        Person by,
        IReadOnlyList<Person> people,
        DateTimeOffset at
    )
    {
        if (WorkPlan.Of(order) is not { } plan)
            return [];
        IEnumerable<Draft> steps =
        [
            .. plan.HoldPoints.Select(p => Point(order, plan, p, at)),
            .. Afterwards(order, plan, at),
        ];
        return [.. steps.Select(s => s.View(by, people))];
    }

    /// <summary>Everybody but one whom role and rule let sign.</summary>
    public static IReadOnlyList<PipeSigner> Signers(
        IEnumerable<Person> people,
        Person but,
        Permission needed,
        Func<Person, Objection?> rule
    ) =>
        [
            .. people
                .Where(p => p.Id != but.Id && RoleRules.May(p, needed) && rule(p) is null)
                .Select(p => new PipeSigner(p.Id, p.UserName!, p.FullName, p.ShortCodeHash is not null)),
        ];

    private static Draft Point(RepairOrder order, WorkPlan plan, HoldPointView point, DateTimeOffset at) =>
        new(
            point.Code,
            point.Title,
            point.Kind == HoldKind.Witness ? PipeStepKind.WitnessPoint : PipeStepKind.HoldPoint,
            point.ReleasedBy,
            point.Evidence,
            HoldPointRelease.Of(order, plan, point.Code),
            Permission.ReleaseHoldPoint,
            person => HoldPointRelease.Objection(order, plan, point, person, at),
            Photo.Of(order, PhotoOf.HoldPoint, point.Code),
            HoldPointEvidence.AsksWitness(plan, point)
        );

    private static IEnumerable<Draft> Afterwards(RepairOrder order, WorkPlan plan, DateTimeOffset at)
    {
        var proof = Proof.Of(order);
        yield return After(
            "proof",
            "Tag hung and photographed; test made",
            PipeStepKind.Proof,
            "technician",
            proof,
            Permission.RecordProof,
            person => Proof.Objection(order, person, at),
            Photo.Of(order, PhotoOf.Tag)
        );
        if (plan.Class != RiskClass.D)
            yield return After(
                "proof-witness",
                "Test witnessed",
                PipeStepKind.ProofWitness,
                plan.Class == RiskClass.C ? "supervisor or inspector" : "inspector",
                order.InRound<ProofWitness>().LastOrDefault(w => w.Asked.Proof == proof?.Id),
                Permission.WitnessProof,
                person => ProofWitness.Objection(order, person, at)
            );
        yield return After(
            "first-look",
            "First look and all that follow taken on",
            PipeStepKind.FirstLook,
            plan.Owner?.Name ?? "who goes back to look",
            order.Last<FirstLookAcceptance>(),
            Permission.AcceptFirstLook,
            person => FirstLookAcceptance.Objection(order, person, at)
        );
        yield return After(
            "acceptance",
            "Taken into service by operations",
            PipeStepKind.Acceptance,
            "operations in charge",
            order.Last<Acceptance>(),
            Permission.AcceptRepair,
            person => Acceptance.Objection(order, person, at)
        );
    }

    private static Draft After(
        string code,
        string title,
        PipeStepKind kind,
        string signedBy,
        SignedRecord? done,
        Permission needed,
        Func<Person, Objection?> rule,
        IEnumerable<Photo>? photos = null
    ) => new(code, title, kind, signedBy, [], done, needed, rule, photos ?? [], false);

    private sealed record Draft(
        string Code,
        string Title,
        PipeStepKind Kind,
        string SignedBy,
        IReadOnlyList<Evidence> Evidence,
        SignedRecord? Done,
        Permission Needed,
        Func<Person, Objection?> Rule,
        IEnumerable<Photo> Photos,
        bool AsksWitness
    )
    {
        public PipeStep View(Person by, IReadOnlyList<Person> people)
        {
            var objection = Done is null ? RoleRules.Objection(by, Needed) ?? Rule(by) : null;
            return new(
                Code,
                Title,
                Kind,
                SignedBy,
                Evidence,
                Done?.By,
                Done?.At,
                objection?.View,
                Done is not null ? [] : Signers(people, by, Needed, Rule),
                [.. Photos.Select(p => new PipePhoto(p.Id, p.By, p.At))],
                AsksWitness
            );
        }
    }
}
