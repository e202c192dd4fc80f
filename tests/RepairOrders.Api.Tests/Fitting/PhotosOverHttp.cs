using System.Net;
using System.Security.Cryptography;
using System.Text.Json;
using RepairOrders.Contract;
using SkiaSharp;

namespace RepairOrders.Api.Tests.Fitting;

public sealed class PhotosOverHttp(Workshop workshop)
{
    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg, "image/jpeg")]
    [InlineData(SKEncodedImageFormat.Png, "image/png")]
    [InlineData(SKEncodedImageFormat.Webp, "image/webp")]
    public async Task A_photograph_is_kept_as_it_was_sent_with_its_checksum(SKEncodedImageFormat format, string kind)
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var picture = AnOrder.Picture(1200, 900, format);
        var record = await scene.Tove.AddPhoto(
            number,
            new MemoryStream(picture),
            PhotoOf.Request,
            caption: "north wall"
        );
        var photo = Body(record);
        (photo.Kind, photo.Bytes, photo.Width, photo.Height).ShouldBe((kind, picture.Length, 1200, 900));
        photo.Sha256.ShouldBe(Convert.ToHexStringLower(SHA256.HashData(picture)));
        using var answer = await scene.Rune.Photo(number, record.Id);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe(kind);
        (await answer.Content.ReadAsByteArrayAsync()).ShouldBe(picture);
        using var small = SKBitmap.Decode(await scene.Rune.Thumbnail(number, record.Id));
        (small.Width, small.Height).ShouldBe((480, 360));
    }

    [Fact]
    public async Task A_part_of_a_photograph_can_be_asked_for_across_blocks()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        // Noise does not compress: larger than two blocks.
        var picture = Noise(600, 500);
        picture.Length.ShouldBeGreaterThan(600_000);
        var record = await scene.Tove.AddPhoto(number, new MemoryStream(picture), PhotoOf.Request);
        using var part = await scene.Mara.Photo(number, record.Id, 262_000, 262_399);
        part.StatusCode.ShouldBe(HttpStatusCode.PartialContent);
        (await part.Content.ReadAsByteArrayAsync()).ShouldBe(picture[262_000..262_400]);
        using var whole = await scene.Mara.Photo(number, record.Id);
        (await whole.Content.ReadAsByteArrayAsync()).ShouldBe(picture);
    }

    [Fact]
    public async Task What_is_no_picture_is_refused_whatever_it_is_called()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var text = await Should.ThrowAsync<Refused>(() => Add("a letter, not a picture"u8.ToArray()));
        (text.Status, text.Code).ShouldBe((415, "photo-kind"));
        var torn = await Should.ThrowAsync<Refused>(() => Add(AnOrder.Picture(1200, 900)[..40]));
        (torn.Status, torn.Code).ShouldBe((415, "photo-unreadable"));
        var empty = await Should.ThrowAsync<Refused>(() => Add([]));
        empty.Status.ShouldBe(415);
        var large = await Should.ThrowAsync<Refused>(() => Add(new byte[RepairOrdersClient.MostPhotoBytes + 1]));
        large.Status.ShouldBe(413);
        (await scene.Mara.Order(number)).Records.ShouldNotContain(r => r.Kind == "photo");

        Task<RecordView> Add(byte[] bytes) => scene.Tove.AddPhoto(number, new MemoryStream(bytes), PhotoOf.Request);
    }

    [Fact]
    public async Task The_same_key_adds_a_photograph_once()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var first = await Add(AnOrder.Picture());
        (await Add(AnOrder.Picture())).Id.ShouldBe(first.Id);
        (await Should.ThrowAsync<Refused>(() => Add(AnOrder.Picture(90, 90)))).Status.ShouldBe(422);
        (await scene.Mara.Order(number)).Records.Count(r => r.Kind == "photo").ShouldBe(1);

        Task<RecordView> Add(byte[] bytes) =>
            scene.Tove.AddPhoto(number, new MemoryStream(bytes), PhotoOf.Request, key: "photo-1");
    }

    [Fact]
    public async Task A_photograph_is_seen_by_its_own_site_only_and_struck_through_with_a_reason()
    {
        var scene = await workshop.Scene();
        var elsewhere = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var record = await scene.Photograph(number, PhotoOf.Request);
        (await Should.ThrowAsync<Refused>(() => elsewhere.Mara.Photo(number, record.Id))).Status.ShouldBe(404);
        (await Should.ThrowAsync<Refused>(() => elsewhere.Mara.Thumbnail(number, record.Id))).Status.ShouldBe(404);
        (await Should.ThrowAsync<Refused>(() => scene.Stranger.Photo(number, record.Id))).Status.ShouldBe(401);
        await scene.Tove.StrikePhoto(number, record.Id, "another pipe", await scene.Version(number));
        var struck = (await scene.Mara.Order(number)).Records.Single(r => r.Id == record.Id);
        struck.SetAsideWhy.ShouldBe("another pipe");
        using var still = await scene.Mara.Photo(number, record.Id);
        still.StatusCode.ShouldBe(HttpStatusCode.OK);
    }

    private static SignedPhoto Body(RecordView record) =>
        record.Body.Deserialize<SignedPhoto>(RepairOrdersClient.Json)!;

    private static byte[] Noise(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height);
        var random = new Random(7);
        for (var x = 0; x < width; x++)
        for (var y = 0; y < height; y++)
            bitmap.SetPixel(x, y, new SKColor((uint)random.NextInt64(uint.MaxValue) | 0xFF000000));
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
