using Bunit;
using Microsoft.Extensions.DependencyInjection;
using RepairOrders.Contract;
using RepairOrders.Ui.Stock;

namespace RepairOrders.Ui.Tests.Today;

/// <summary>Days are counted where they are read.</summary>
public sealed class DaysOfTheReader : BunitContext
{
    public DaysOfTheReader() =>
        Services.AddSingleton<TimeProvider>(new StoppedClock(new(2026, 3, 14, 23, 30, 0, TimeSpan.Zero)));

    [Theory]
    [InlineData("Europe/Oslo", "expires tomorrow")]
    [InlineData("America/New_York", "expires in 2 days")]
    public void A_batch_expires_by_the_readers_calendar(string zone, string words)
    {
        var batch = new BatchView(
            Guid.Empty,
            "mill",
            "PUTTY-W",
            "putty",
            "pcs",
            "P-0291",
            new DateOnly(2026, 3, 16),
            null,
            BatchStanding.Good,
            null,
            false,
            new BatchBalance(4, 3, 1, 0, 0)
        );
        Render<BatchMark>(mark =>
            mark.Add(m => m.Batch, batch).AddCascadingValue(TimeZoneInfo.FindSystemTimeZoneById(zone))
        )
            .Markup.ShouldContain(words);
    }
}
