using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>A photograph's record. The picture is kept beside it as it was sent, cut into blocks, so that a backup is one thing.</summary>
internal sealed class Photo : SignedRecord<SignedPhoto>
{
    private Photo() { }

    public Photo(Guid id, SignedPhoto body)
        : base(body) => Id = id;

    public override string Kind => "photo";

    public override string Summary =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Words.Of(Asked.Of)}{(Asked.Key is { } key ? $" {key}" : "")}{(Asked.Caption is { } caption ? $": {caption}" : "")}, {Asked.Bytes / 1000:0} kB"
        );

    /// <summary>Photographs of one thing that stand in the round.</summary>
    public static IEnumerable<Photo> Of(RepairOrder order, PhotoOf what, string? key = null) =>
        order.InRound<Photo>().Where(p => p.Asked.Of == what && (key is null || p.Asked.Key == key));
}

/// <summary>A block of a photograph's bytes.</summary>
internal sealed class PhotoBlock
{
    public Guid PhotoId { get; init; }
    public int Number { get; init; }
    public byte[] Bytes { get; init; } = [];
}

/// <summary>The small picture of a photograph.</summary>
internal sealed class PhotoThumbnail
{
    public Guid PhotoId { get; init; }
    public byte[] Bytes { get; init; } = [];
}
