using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Stridewright.Workbench;
using Stridewright.Workbench.Handouts;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>Reports as JSON (docs/json.md).</summary>
internal static class ReportJson
{
    // Titles in any script stay readable; the output is a stream of its own, not part of a page.
    private static readonly ReportJsonContext Context = new(
        new JsonSerializerOptions(ReportJsonContext.Default.Options)
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    public static void Write(TextWriter output, ArrangeReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.ArrangeReport));

    public static void Write(TextWriter output, CheckReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.CheckReport));

    public static void Write(TextWriter output, ProfileReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.ProfileReport));

    public static void Write(TextWriter output, PlayerReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.PlayerReport));

    public static void Write(TextWriter output, ProgressReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.ProgressReport));

    public static void Write(TextWriter output, FingerReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.FingerReport));

    public static void Write(TextWriter output, CompareReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.CompareReport));

    public static void Write(TextWriter output, LessonReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.LessonReport));

    public static void Write(TextWriter output, HandoutReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.HandoutReport));

    public static void Write(TextWriter output, SpotReport report) =>
        output.WriteLine(JsonSerializer.Serialize(report, Context.SpotReport));
}

[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    WriteIndented = true,
    NewLine = "\n",
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    Converters = [
        typeof(ArrangeOutcomeConverter),
        typeof(CheckOutcomeConverter),
        typeof(CompareOutcomeConverter),
        typeof(LessonOutcomeConverter),
    ]
)]
[JsonSerializable(typeof(ArrangeReport))]
[JsonSerializable(typeof(ProgressReport))]
[JsonSerializable(typeof(CheckReport))]
[JsonSerializable(typeof(ProfileReport))]
[JsonSerializable(typeof(PlayerReport))]
[JsonSerializable(typeof(FingerReport))]
[JsonSerializable(typeof(CompareReport))]
[JsonSerializable(typeof(LessonReport))]
[JsonSerializable(typeof(SpotReport))]
[JsonSerializable(typeof(HandoutReport))]
internal sealed partial class ReportJsonContext : JsonSerializerContext;

internal sealed class ArrangeOutcomeConverter()
    : JsonStringEnumConverter<ArrangeOutcome>(JsonNamingPolicy.KebabCaseLower);

internal sealed class CheckOutcomeConverter() : JsonStringEnumConverter<CheckOutcome>(JsonNamingPolicy.KebabCaseLower);

internal sealed class CompareOutcomeConverter()
    : JsonStringEnumConverter<CompareOutcome>(JsonNamingPolicy.KebabCaseLower);

internal sealed class LessonOutcomeConverter()
    : JsonStringEnumConverter<LessonOutcome>(JsonNamingPolicy.KebabCaseLower);
