using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Reviewing;

internal static class ReviewingEndpoints
{
    public static void MapReviewing(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/ladder-answers", Answer)
            .Needs(Permission.AnswerLadder)
            .WithSummary("Answer the step of the ladder it has reached");
        orders
            .MapPost("/{number}/reviews", Review)
            .Needs(Permission.ReviewOrder)
            .WithSummary("Enter what the review decided");
    }

    public static void MapReviews(this IEndpointRouteBuilder api)
    {
        api.MapGet("/reviews/overdue", Overdue)
            .Needs(Permission.ReadRegister)
            .WithSummary("Everything overdue or past life, by class and lateness");
        api.MapGet("/reviews/live-figures", Figures)
            .Needs(Permission.ReadRegister)
            .WithSummary("Live repairs in figures, their trend, and failures by method");
        api.MapGet("/sections/carried-risk", Sections)
            .Needs(Permission.ReadRegister)
            .WithSummary("The risk each section of a site carries");
        api.MapGet("/sections/{site}/{section}/carried-risk", Section)
            .Needs(Permission.ReadRegister)
            .WithSummary("The risk one section carries");
    }

    private static Task<ReviewView> Overdue(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        string? site = null
    ) => ReviewQuery.Read(store, site, by, clock.Now(), stop);

    private static Task<LiveFiguresView> Figures(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    ) => LiveFiguresQuery.Read(store, by, clock.Now(), stop);

    private static Task<IReadOnlyList<CarriedRiskView>> Sections(
        [Required] string site,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    ) => CarriedRiskQuery.Read(store, site, null, by, clock.Now(), stop);

    private static async Task<CarriedRiskView> Section(
        string site,
        string section,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        if (!by.MaySee(site))
            throw new NotHere($"There is no site {site}, or it is not one of yours.");
        return (await CarriedRiskQuery.Read(store, site, section, by, clock.Now(), stop)) is [var one]
            ? one
            : CarriedRiskQuery.View(site, section, []);
    }

    private static async Task<RecordView> Answer(
        string number,
        AnswerLadder ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(LadderAnswer.Objection(order, ask, by, at));
        var ladder = OrderToday.LadderOf(order.Columns, at)!;
        var answer = order.Sign(new LadderAnswer(new(ask, ladder.Item, ladder.Step)), by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return answer.View();
    }

    private static async Task<RecordView> Review(
        string number,
        ReviewOrder ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Reviewing.Review.Objection(order, ask, by, at));
        var review = order.Sign(new Review(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return review.View();
    }
}
