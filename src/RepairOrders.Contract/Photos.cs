using System.Net.Http.Headers;

namespace RepairOrders.Contract;

/// <summary>What a photograph shows, and so where it belongs.</summary>
public enum PhotoOf
{
    /// <summary>What was found before any work.</summary>
    Request,

    /// <summary>The pipe as it was assessed.</summary>
    Assessment,

    /// <summary>A hold point of the fitting; the key is its code.</summary>
    HoldPoint,

    /// <summary>The tag on the repair.</summary>
    Tag,

    /// <summary>The test.</summary>
    Proof,

    /// <summary>A look; the key, where there is one, is the visit.</summary>
    Visit,

    /// <summary>A failure.</summary>
    Failure,

    /// <summary>The bare pipe after removal.</summary>
    Removal,

    /// <summary>The permanent fix.</summary>
    PermanentFix,
}

/// <summary>The body of a photograph's record; the picture itself is fetched by the record's id.</summary>
/// <param name="Of">What it shows.</param>
/// <param name="Key">The hold point's code, or the record it belongs to.</param>
/// <param name="Caption">What is to be seen.</param>
/// <param name="Kind">Content type, told from the bytes: <c>image/jpeg</c>, <c>image/png</c> or <c>image/webp</c>.</param>
/// <param name="Bytes">Size of the original.</param>
/// <param name="Width">Width of the original, pixels, as it is meant to be seen.</param>
/// <param name="Height">Height of the original, pixels.</param>
/// <param name="Sha256">SHA-256 of the original, hex.</param>
public sealed record SignedPhoto(
    PhotoOf Of,
    string? Key,
    string? Caption,
    string Kind,
    long Bytes,
    int Width,
    int Height,
    string Sha256
);

public sealed partial class RepairOrdersClient
{
    /// <summary>The most bytes a photograph may have.</summary>
    public const long MostPhotoBytes = 20_000_000;

    /// <summary>Adds a photograph to an order; the original is kept as it is.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="picture">The picture, JPEG, PNG or WebP; it is streamed.</param>
    /// <param name="of">What it shows.</param>
    /// <param name="subject">The hold point's code, or the record it belongs to.</param>
    /// <param name="caption">What is to be seen.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The photograph's record; its body is a <see cref="SignedPhoto"/>.</returns>
    /// <exception cref="Refused">413 when it is too large, 415 when it is no picture of these kinds.</exception>
    public Task<RecordView> AddPhoto(
        string number,
        Stream picture,
        PhotoOf of,
        string? subject = null,
        string? caption = null,
        string? key = null
    )
    {
        var content = new StreamContent(picture);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        var path =
            $"orders/{number}/photos?of={Word(of)}"
            + (subject is null ? "" : $"&key={Escaped(subject)}")
            + (caption is null ? "" : $"&caption={Escaped(caption)}");
        return Post<RecordView>(path, content, key);
    }

    /// <summary>The original of a photograph, or a part of it.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="photo">The photograph's record.</param>
    /// <param name="from">First byte wanted.</param>
    /// <param name="to">Last byte wanted; nothing for the rest.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The answer, its content to be streamed and disposed by the caller.</returns>
    /// <exception cref="Refused">404 when there is none that the caller may see.</exception>
    public async Task<HttpResponseMessage> Photo(
        string number,
        Guid photo,
        long? from = null,
        long? to = null,
        CancellationToken stop = default
    )
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"{Root}orders/{number}/photos/{photo}");
        if (Token is not null)
            request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", Token);
        if (from is not null)
            request.Headers.Range = new RangeHeaderValue(from, to);
        var response = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop)
            .ConfigureAwait(false);
        if (response.IsSuccessStatusCode)
            return response;
        using (response)
            throw await Refusal(response).ConfigureAwait(false);
    }

    /// <summary>A small picture of a photograph, JPEG, with nothing in it but the picture.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="photo">The photograph's record.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The bytes of the picture.</returns>
    /// <exception cref="Refused">404 when there is none that the caller may see.</exception>
    public async Task<byte[]> Thumbnail(string number, Guid photo, CancellationToken stop = default)
    {
        using var response = await Send(
                HttpMethod.Get,
                $"orders/{number}/photos/{photo}/thumbnail",
                null,
                null,
                null,
                stop
            )
            .ConfigureAwait(false);
        return await response.Content.ReadAsByteArrayAsync(stop).ConfigureAwait(false);
    }

    /// <summary>Strikes through a photograph that does not belong here; it stays in the history.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="photo">The photograph's record.</param>
    /// <param name="why">The reason.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>When it is set aside.</returns>
    /// <exception cref="Refused">412 when the order changed since.</exception>
    public Task StrikePhoto(string number, Guid photo, string why, string version) =>
        Delete<Nothing>($"orders/{number}/photos/{photo}", why, version);
}
