using System.Text.Json.Serialization;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Pocket;

/// <summary>What the file's page is told in JSON.</summary>
/// <param name="Mark">The same for files of the same content: what was ticked is remembered under it.</param>
internal sealed record PocketData(
    string Title,
    string? Player,
    string Mark,
    IReadOnlyList<PocketPartData> Parts,
    IReadOnlyList<PocketTask> Today
);

/// <summary>A score as its page needs it.</summary>
/// <param name="Credits">What stands under its title.</param>
/// <param name="Heard">As it is heard, which is what its MIDI file says.</param>
/// <param name="QuartersPerMinute">At its first bar.</param>
internal sealed record PocketPartData(
    string Title,
    IReadOnlyList<string> Credits,
    Heard Heard,
    double QuartersPerMinute
);

[JsonSourceGenerationOptions(
    System.Text.Json.JsonSerializerDefaults.Web,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(PocketData))]
internal sealed partial class PocketJson : JsonSerializerContext;
