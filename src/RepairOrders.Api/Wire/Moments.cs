using System.Text.Json;
using System.Text.Json.Serialization;

namespace RepairOrders.Api.Wire;

/// <summary>
/// A moment may come with the offset of the place it was read off at; it is taken as universal time, which is what the store keeps
/// and what a record's words say.
/// </summary>
internal sealed class Moments : JsonConverter<DateTimeOffset>
{
    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.GetDateTimeOffset().ToUniversalTime();

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value);
}
