using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Configuration;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.OrderSheets;
using RepairOrders.Api.People;
using RepairOrders.Api.Register;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Papers;

internal static class PapersEndpoints
{
    public static void MapPapers(this IEndpointRouteBuilder orders) =>
        orders
            .MapGet("/{number}/papers/{kind}.pdf", Paper)
            .Needs(Permission.ReadOrder)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .WithSummary($"A paper of the order: {string.Join(", ", PaperCatalogue.All)}");

    public static void MapRegisterPaper(this IEndpointRouteBuilder api) =>
        api.MapGet("/papers/register.pdf", Register)
            .Needs(Permission.ReadRegister)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .WithSummary("An extract of the register as PDF, with the filters of the list");

    private static async Task<FileContentHttpResult> Paper(
        string number,
        string kind,
        Person by,
        RepairStore store,
        TimeProvider clock,
        IConfiguration settings,
        HttpRequest request,
        CancellationToken stop,
        [AllowedValues("a4", "letter")] string size = "a4",
        [StringLength(200)] string? address = null
    )
    {
        if (!PaperCatalogue.All.Contains(kind))
            throw new NotHere(
                $"There is no paper \"{kind}\"; allowed is one of {string.Join(", ", PaperCatalogue.All)}."
            );
        var order = await store.Order(number, by, null, stop);
        var at = clock.Now();
        var around = await Around.Of(store, [AroundKey.Of(order)], at, stop);
        var sheet = OrderSheetQuery.Sheet(order, by, at, [], around[order.Id]);
        var page = PublicAddress.Of(settings, request, address) + "/pipe/" + order.Number;
        var facts = new OrderFacts(sheet, order, page);
        var paper = PaperCatalogue.OfSheaf.TryGetValue(kind, out var made)
            ? made(facts, Size(size))
            : PickListPaper.Of(facts, await PickListQuery.Read(number, by, store, clock, stop), Size(size));
        return TypedResults.Bytes(paper, "application/pdf");
    }

    private static async Task<FileContentHttpResult> Register(
        Person by,
        RepairStore store,
        TimeProvider clock,
        [AsParameters] AskedRegister asked,
        CancellationToken stop,
        [AllowedValues("a4", "letter")] string size = "a4"
    )
    {
        if (asked.Site is not null && !by.MaySee(asked.Site))
            throw new NotHere($"There is no site {asked.Site}, or it is not one of yours.");
        var filter = asked.Filter();
        var at = clock.Now();
        List<RegisterRow> rows = [];
        await foreach (var row in RegisterQuery.All(store, filter, by, at, stop))
        {
            rows.Add(row);
            if (rows.Count == RegisterExtract.MostRows)
                break;
        }
        string?[] words =
        [
            asked.Site is null ? null : $"site {asked.Site}",
            asked.Search is null ? null : $"\"{asked.Search}\"",
            asked.Class is null ? null : $"class {asked.Class}",
            asked.Flag,
            .. asked.Stage ?? [],
            asked.Live ? "not at an end" : null,
        ];
        var heading = words.Any(w => w is not null) ? string.Join(", ", words.OfType<string>()) : "all you may see";
        return TypedResults.Bytes(
            RegisterExtract.Of(rows, heading, $"{at:yyyy-MM-dd HH:mm} UTC", Size(size)),
            "application/pdf"
        );
    }

    private static PaperSize Size(string code) => PaperSize.All.First(s => s.Code == code);
}
