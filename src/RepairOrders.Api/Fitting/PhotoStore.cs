using System.Security.Cryptography;
using RepairOrders.Api.Store;

namespace RepairOrders.Api.Fitting;

/// <summary>Writes and reads photographs block by block; never more than one block is in memory.</summary>
internal static class PhotoStore
{
    public const int BlockBytes = 256 * 1024;

    /// <summary>Writes the bytes in the running transaction.</summary>
    /// <returns>Their number and their SHA-256, hex.</returns>
    public static async Task<(long Bytes, string Sha256)> Write(RepairStore store, Guid photo, Stream stream)
    {
        stream.Position = 0;
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var block = new byte[BlockBytes];
        long bytes = 0;
        for (var number = 0; ; number++)
        {
            var read = await stream.ReadAtLeastAsync(block, block.Length, throwOnEndOfStream: false);
            if (read == 0)
                break;
            hash.AppendData(block, 0, read);
            bytes += read;
            var part = read == block.Length ? block : block[..read];
            await store.Database.ExecuteSqlAsync(
                $"INSERT INTO photo_blocks (photo_id, number, bytes) VALUES ({photo}, {number}, {part})",
                CancellationToken.None
            );
        }
        return (bytes, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    /// <summary>The bytes of a photograph as a stream that can be sought, so that a part can be asked for.</summary>
    public static Stream Open(RepairStore store, Guid photo, long bytes) => new Blocks(store, photo, bytes);

    private sealed class Blocks(RepairStore store, Guid photo, long length) : Stream
    {
        private byte[] block = [];
        private int number = -1;

        public override bool CanRead => true;
        public override bool CanSeek => true;
        public override bool CanWrite => false;
        public override long Length => length;
        public override long Position { get; set; }

        public override async ValueTask<int> ReadAsync(
            Memory<byte> buffer,
            CancellationToken cancellationToken = default
        )
        {
            if (Position >= length)
                return 0;
            var wanted = (int)(Position / BlockBytes);
            if (wanted != number)
            {
                block = await store
                    .Set<PhotoBlock>()
                    .Where(b => b.PhotoId == photo && b.Number == wanted)
                    .Select(b => b.Bytes)
                    .SingleAsync(cancellationToken);
                number = wanted;
            }
            var from = (int)(Position % BlockBytes);
            var count = Math.Min(buffer.Length, block.Length - from);
            block.AsSpan(from, count).CopyTo(buffer.Span);
            Position += count;
            return count;
        }

        public override Task<int> ReadAsync(
            byte[] buffer,
            int offset,
            int count,
            CancellationToken cancellationToken
        ) => ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override long Seek(long offset, SeekOrigin origin) =>
            Position = origin switch
            {
                SeekOrigin.Begin => offset,
                SeekOrigin.Current => Position + offset,
                _ => length + offset,
            };

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override void Flush() { }

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
