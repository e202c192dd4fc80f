using RepairOrders.Contract;
using RepairOrders.Ui.Orders;

namespace RepairOrders.Ui.Tests.Orders;

/// <summary>A form may be signed after photographs were added to its order, and after nothing else.</summary>
public sealed class LatestTests
{
    private static readonly OrderSheet Seen = CannedOrder.Sheet();

    [Fact]
    public void A_photograph_more_changes_nothing_that_was_read() =>
        StepContext.SameButPhotographs(Seen, With(Another("photo"))).ShouldBeTrue();

    [Fact]
    public void Another_record_does() =>
        StepContext.SameButPhotographs(Seen, With(Another("assessment"))).ShouldBeFalse();

    [Fact]
    public void A_record_set_aside_does() =>
        StepContext
            .SameButPhotographs(
                Seen,
                Seen with
                {
                    Records =
                    [
                        .. Seen.Records.Select(r =>
                            r.Kind == "assessment" ? r with { SetAsideAt = CannedOrder.At } : r
                        ),
                    ],
                }
            )
            .ShouldBeFalse();

    [Fact]
    public void A_design_with_another_fingerprint_does() =>
        StepContext.SameButPhotographs(Seen, Seen with { Fingerprint = "another" }).ShouldBeFalse();

    private static OrderSheet With(RecordView record) => Seen with { Records = [.. Seen.Records, record] };

    private static RecordView Another(string kind) =>
        Seen.Records.First(r => r.Kind == kind) with
        {
            Id = Guid.NewGuid(),
        };
}
