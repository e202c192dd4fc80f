using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

internal static class PhotoEndpoints
{
    public static void MapPhotos(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/photos", Add)
            .WithMetadata(new TakesPicture(RepairOrdersClient.MostPhotoBytes))
            .Needs(Permission.AddPhoto)
            .WithSummary("Add a photograph: the body is the picture, JPEG, PNG or WebP, at most 20 MB");
        orders
            .MapGet("/{number}/photos/{photo:guid}", Original)
            .Needs(Permission.ReadOrder)
            .WithSummary("The original of a photograph, or a range of it");
        orders
            .MapGet("/{number}/photos/{photo:guid}/thumbnail", Thumbnail)
            .Needs(Permission.ReadOrder)
            .WithSummary("The small picture of a photograph");
        orders
            .MapDelete("/{number}/photos/{photo:guid}", Strike)
            .Needs(Permission.AddPhoto)
            .WithSummary("Strike through a photograph that does not belong here");
    }

    private static async Task<RecordView> Add(
        string number,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpRequest request,
        string? of = null,
        [StringLength(60)] string? key = null,
        [StringLength(300)] string? caption = null
    )
    {
        var what = Keys.Word<PhotoOf>("of", of) ?? throw new MalformedAsk("of", "of is missing; say what it shows.");
        var picture = await Pictures.Read(request.Body);
        var id = Guid.CreateVersion7();
        var (bytes, sha256) = await PhotoStore.Write(store, id, request.Body);
        store.Add(new PhotoThumbnail { PhotoId = id, Bytes = picture.Thumbnail });
        // The order is taken last: however long the picture takes, nobody else waits for it.
        var order = await store.Order(number, by);
        var body = new SignedPhoto(what, key, caption, picture.Kind, bytes, picture.Width, picture.Height, sha256);
        var record = order.Sign(new Photo(id, body), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<FileStreamHttpResult> Original(
        string number,
        Guid photo,
        Person by,
        RepairStore store,
        CancellationToken stop
    )
    {
        var found = await Find(store, number, photo, by, stop);
        return TypedResults.Stream(
            PhotoStore.Open(store, photo, found.Asked.Bytes),
            found.Asked.Kind,
            lastModified: found.At,
            entityTag: new EntityTagHeaderValue($"\"{found.Asked.Sha256}\""),
            enableRangeProcessing: true
        );
    }

    private static async Task<FileContentHttpResult> Thumbnail(
        string number,
        Guid photo,
        Person by,
        RepairStore store,
        CancellationToken stop
    )
    {
        await Find(store, number, photo, by, stop);
        var bytes = await store
            .Set<PhotoThumbnail>()
            .Where(t => t.PhotoId == photo)
            .Select(t => t.Bytes)
            .SingleAsync(stop);
        return TypedResults.Bytes(bytes, "image/jpeg");
    }

    private static async Task<NoContent> Strike(
        string number,
        Guid photo,
        [Required, StringLength(1000, MinimumLength = 3)] string why,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var found = order.All<Photo>().FirstOrDefault(p => p.Id == photo) ?? throw NoPhoto();
        order.SetAside(found, by, clock.Now(), why);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static async Task<Photo> Find(
        RepairStore store,
        string number,
        Guid photo,
        Person by,
        CancellationToken stop
    )
    {
        var found = await store
            .Set<Photo>()
            .AsNoTracking()
            .Where(p =>
                p.Id == photo
                && store.Orders.Any(o => o.Id == p.OrderId && o.Number == number && by.Sites.Contains(o.Site.ShortName))
            )
            .SingleOrDefaultAsync(stop);
        return found ?? throw NoPhoto();
    }

    private static NotHere NoPhoto() => new("There is no such photograph that you may see.");
}
