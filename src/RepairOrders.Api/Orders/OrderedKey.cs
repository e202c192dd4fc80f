namespace RepairOrders.Api.Orders;

/// <summary>
/// Version 7 keys that ascend within this process, also inside one millisecond, where the plain ones are random. Records signed
/// at one moment are told apart by their keys, and the stage follows from their order: it must not be left to chance.
/// </summary>
internal static class OrderedKey
{
    private static readonly Lock Gate = new();
    private static long millisecond;
    private static int count;

    /// <summary>The next key: a millisecond, a twelve-bit count within it, and random bits (RFC 9562, 6.2, method 1).</summary>
    public static Guid Next()
    {
        long at;
        int within;
        lock (Gate)
        {
            var now = DateTimeOffset.UtcNow.ToUnixTimeMilliseconds();
            if (now > millisecond)
                (millisecond, count) = (now, 0);
            else if (++count > 0xFFF)
                (millisecond, count) = (millisecond + 1, 0);
            (at, within) = (millisecond, count);
        }
        Span<byte> bytes = stackalloc byte[16];
        Guid.CreateVersion7(DateTimeOffset.FromUnixTimeMilliseconds(at)).TryWriteBytes(bytes, bigEndian: true, out _);
        bytes[6] = (byte)(0x70 | (within >> 8));
        bytes[7] = (byte)within;
        return new Guid(bytes, bigEndian: true);
    }
}
