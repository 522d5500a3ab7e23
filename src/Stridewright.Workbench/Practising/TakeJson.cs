using System.Text.Json;
using System.Text.Json.Serialization;
using Stridewright.Music;

namespace Stridewright.Workbench.Practising;

/// <summary>A take as the text of its document: JSON, the keys in base64. What a later version adds is passed over.</summary>
internal static class TakeJson
{
    private static readonly TakeJsonContext Context = new(
        new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            RespectNullableAnnotations = true,
            Converters = { new BytesConverter(), new NextConverter() },
        }
    );

    public static string Write(KeptTake take) => JsonSerializer.Serialize(take, Context.KeptTake);

    /// <returns>Null: it is no take.</returns>
    public static KeptTake? Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, Context.KeptTake);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private sealed class BytesConverter : JsonConverter<ValueList<byte>>
    {
        public override ValueList<byte> Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) =>
            reader.TryGetBytesFromBase64(out var bytes) ? bytes.ToValueList() : throw new JsonException();

        public override void Write(Utf8JsonWriter writer, ValueList<byte> value, JsonSerializerOptions options) =>
            writer.WriteBase64StringValue(value.ToArray());
    }

    private sealed class NextConverter : JsonConverter<ValueList<KeptNext>>
    {
        public override ValueList<KeptNext> Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) =>
            (JsonSerializer.Deserialize(ref reader, Context.KeptNextArray) ?? throw new JsonException()).ToValueList();

        public override void Write(Utf8JsonWriter writer, ValueList<KeptNext> value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, value.ToArray(), Context.KeptNextArray);
    }
}

[JsonSerializable(typeof(KeptTake))]
[JsonSerializable(typeof(KeptNext[]))]
internal sealed partial class TakeJsonContext : JsonSerializerContext;
