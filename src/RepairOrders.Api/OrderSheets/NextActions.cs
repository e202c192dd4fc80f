using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Closing;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Exiting;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.MakingPermanent;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Owning;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Requesting;
using RepairOrders.Api.Reviewing;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

/// <summary>
/// Every ask that can be made of an order, in the order of the procedure, each with its rule. An ask that makes no sense at this
/// stage is left out; one that this person may not do carries the objection.
/// </summary>
internal static class NextActions
{
    public static IReadOnlyList<ActionView> For(RepairOrder order, Person by, DateTimeOffset at)
    {
        ActionView?[] asks =
        [
            Ask(
                "assessing",
                "record-assessment",
                "Assess the pipe",
                Permission.RecordAssessment,
                Assessment.Objection(order, by, at)
            ),
            Ask(
                "choosing",
                "choose-method",
                "Choose a method",
                Permission.ChooseMethod,
                Choice.Objection(order, by, at)
            ),
            Ask(
                "choosing",
                "sign-deviation",
                "Sign a deviation",
                Permission.SignDeviation,
                Deviation.Objection(order, by, at)
            ),
            Ask("sizing", "size-repair", "Size the repair", Permission.SizeRepair, Design.Objection(order, by, at)),
            Ask(
                "approving",
                "approve-order",
                "Approve the design",
                Permission.ApproveOrder,
                Approval.Objection(order, by, at)
            ),
            Ask(
                "issuing",
                "issue-material",
                "Issue material",
                Permission.IssueMaterial,
                MaterialIssue.Objection(order, by, at)
            ),
            Ask(
                "issuing",
                "agree-substitution",
                "Agree to a substitution",
                Permission.AgreeSubstitution,
                Substitution.Objection(order, by, at)
            ),
            Ask(
                "readying",
                "consent-to-live-fit",
                "Consent to a fit on the live line",
                Permission.ConsentToLiveFit,
                LiveFitConsent.Objection(order, by, at)
            ),
            Ask("readying", "ready-order", "Ready the job", Permission.ReadyOrder, Readiness.Objection(order, by, at)),
            Ask(
                "fitting",
                "record-climate",
                "Read the climate",
                Permission.RecordReadings,
                ClimateReading.Objection(order, by, at)
            ),
            Ask("fitting", "start-mix", "Start a mix", Permission.StartMix, Mix.Objection(order, by, at)),
            Ask(
                "fitting",
                "release-hold-point",
                "Sign the next hold point",
                Permission.ReleaseHoldPoint,
                HoldPointRelease.Objection(order, by, at)
            ),
            Ask(
                "fitting",
                "record-cure",
                "Read the pipe temperature",
                Permission.RecordReadings,
                CureReading.Objection(order, by, at)
            ),
            Ask("fitting", "stop-job", "Stop the job", Permission.StopJob, Stop.NothingToStop(order)),
            Ask(
                "fitting",
                "resume-job",
                "Let the job go on",
                Permission.ResumeJob,
                Resumption.Objection(order, by, at)
            ),
            Ask(
                "issuing",
                "return-material",
                "Take material back",
                Permission.ReturnMaterial,
                MaterialReturn.Objection(order, by, at)
            ),
            Ask(
                "issuing",
                "account-for-material",
                "Account for the material",
                Permission.AccountForMaterial,
                MaterialUse.Objection(order, by, at)
            ),
            Ask("proving", "waive-test", "Waive the test", Permission.WaiveTest, TestWaiver.Objection(order, by, at)),
            Ask("proving", "record-proof", "Prove the repair", Permission.RecordProof, Proof.Objection(order, by, at)),
            Ask(
                "proving",
                "witness-proof",
                "Witness the test",
                Permission.WitnessProof,
                ProofWitness.Objection(order, by, at)
            ),
            Ask(
                "proving",
                "accept-departures",
                "Accept the departures",
                Permission.AcceptDepartures,
                DepartureAcceptance.Objection(order, by, at)
            ),
            Ask(
                "proving",
                "accept-first-look",
                "Take on the first look",
                Permission.AcceptFirstLook,
                FirstLookAcceptance.Objection(order, by, at)
            ),
            Ask(
                "proving",
                "accept-repair",
                "Take the repair into service",
                Permission.AcceptRepair,
                Acceptance.Objection(order, by, at)
            ),
            Withdrawal.Own(order, by) is { } own
                ? Ask(
                    "approving",
                    "withdraw-approval",
                    "Withdraw your approval",
                    Permission.WithdrawApproval,
                    Withdrawal.Objection(order, own, by)
                )
                : null,
            Ask(
                "consenting",
                "record-consent",
                "Write down a spoken consent",
                Permission.RecordConsent,
                Consent.Objection(order, by, at)
            ),
            Ask(
                "consenting",
                "confirm-consent",
                "Confirm your consent",
                Permission.ConfirmConsent,
                Confirmation.Objection(order, by)
            ),
            Ask(
                "consenting",
                "grant-period",
                "Grant one more period",
                Permission.GrantPeriod,
                DebtPeriod.Objection(order, by, at)
            ),
            Ask(
                "requesting",
                "request-again",
                "Send the request again",
                Permission.RequestRepair,
                Request.AgainObjection(order, by, at)
            ),
            Ask(
                "exiting",
                "exit-order",
                "Take the order out of the procedure",
                Permission.ExitOrder,
                ExitRules.Objection(order, by, at)
            ),
            Ask(
                "exiting",
                "sign-exit",
                "Sign the exit as second",
                Permission.SignExit,
                ExitSignature.Objection(order, by, at)
            ),
            Ask(
                "exiting",
                "return-to-service",
                "Put the line back into service",
                Permission.ReturnToService,
                ServiceReturn.Objection(order, by, at)
            ),
            Ask("revisiting", "record-visit", "Record a visit", Permission.RecordVisit, Visit.Objection(order, by, at)),
            Ask(
                "revisiting",
                "countersign-visit",
                "Countersign a visit",
                Permission.CountersignVisit,
                VisitCountersignature.Objection(order, by, at)
            ),
            Ask(
                "extending",
                "ask-extension",
                "Ask for an extension",
                Permission.AskExtension,
                Extension.Objection(order, by, at)
            ),
            Ask(
                "extending",
                "decide-extension",
                "Decide on the extension",
                Permission.DecideExtension,
                ExtensionDecision.Objection(order, by, at)
            ),
            Failure.Concerns(order)
                ? Ask("failing", "report-failure", "Report a failure", Permission.ReportFailure, null)
                : null,
            Ask("failing", "make-safe", "Make it safe", Permission.MakeSafe, MadeSafe.Objection(order, by, at)),
            Ask(
                "failing",
                "agree-containment",
                "Agree to containment",
                Permission.AgreeContainment,
                ContainmentAgreement.Objection(order, by, at)
            ),
            Ask(
                "failing",
                "state-failure-mode",
                "State how it failed",
                Permission.StateFailureMode,
                FailureStatement.Objection(order, by, at)
            ),
            Ask(
                "removing",
                "order-removal",
                "Order removal",
                Permission.OrderRemoval,
                RemovalOrder.Objection(order, by, at)
            ),
            Ask(
                "removing",
                "record-removal",
                "Record the removal",
                Permission.RecordRemoval,
                Removal.Objection(order, by, at)
            ),
            Ask(
                "removing",
                "inspect-removal",
                "Enter what the bare pipe shows",
                Permission.InspectRemoval,
                RemovalInspection.Objection(order, by, at)
            ),
            Ask(
                "making-permanent",
                "record-permanent-fix",
                "Record the permanent fix",
                Permission.RecordPermanentFix,
                PermanentFix.Objection(order, by, at)
            ),
            Ask("closing", "close-order", "Close the order", Permission.CloseOrder, CloseOut.Objection(order, by, at)),
            Ask(
                "closing",
                "countersign-close-out",
                "Countersign the close-out",
                Permission.CountersignCloseOut,
                CloseOutCountersignature.Objection(order, by, at)
            ),
            Ask(
                "closing",
                "reopen-order",
                "Reopen the order",
                Permission.ReopenOrder,
                Reopening.Objection(order, by, at)
            ),
            Ask(
                "owning",
                "offer-hand-over",
                "Hand the order over",
                Permission.OfferHandOver,
                HandOver.Objection(order, by, at)
            ),
            Ask(
                "owning",
                "accept-hand-over",
                "Accept the order",
                Permission.AcceptHandOver,
                Owner.Objection(order, by, at)
            ),
            Ask(
                "reviewing",
                "answer-ladder",
                "Answer the ladder",
                Permission.AnswerLadder,
                LadderAnswer.Objection(order, by, at)
            ),
            Ask("reviewing", "review-order", "Enter a review", Permission.ReviewOrder, Review.Objection(order, by, at)),
        ];
        return [.. asks.OfType<ActionView>()];

        ActionView? Ask(string step, string action, string words, Permission permission, Objection? objection) =>
            objection is { IsOfStage: true }
                ? null
                : new(step, action, words, (RoleRules.Objection(by, permission) ?? objection)?.View);
    }
}
