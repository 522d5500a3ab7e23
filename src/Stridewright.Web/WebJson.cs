using System.Text.Json;
using System.Text.Json.Serialization;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Listening;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;
using Stridewright.Workbench.Tunes;

namespace Stridewright.Web;

/// <summary>The JSON of the contract: numbers are numbers, and names that nobody knows are faults.</summary>
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    NumberHandling = JsonNumberHandling.Strict,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true
)]
[JsonSerializable(typeof(Brought))]
[JsonSerializable(typeof(TypedText))]
[JsonSerializable(typeof(SettingWanted))]
[JsonSerializable(typeof(SettingMade))]
[JsonSerializable(typeof(Heard))]
[JsonSerializable(typeof(SheetBars))]
[JsonSerializable(typeof(SpotNotes))]
[JsonSerializable(typeof(ValueList<WayFound>))]
[JsonSerializable(typeof(SpotSeen))]
[JsonSerializable(typeof(SpotWish))]
[JsonSerializable(typeof(SpotMade))]
[JsonSerializable(typeof(HandoutWanted))]
[JsonSerializable(typeof(HandoutMade))]
[JsonSerializable(typeof(ValueList<OtherMade>))]
[JsonSerializable(typeof(PairWanted))]
[JsonSerializable(typeof(VersionsCompared))]
[JsonSerializable(typeof(PlayerWanted))]
[JsonSerializable(typeof(PlayerSaid))]
[JsonSerializable(typeof(PlayerTold))]
[JsonSerializable(typeof(LeapTestTold))]
[JsonSerializable(typeof(LeapTestParts))]
[JsonSerializable(typeof(TuneTold))]
[JsonSerializable(typeof(TunePages))]
[JsonSerializable(typeof(TuneChange))]
[JsonSerializable(typeof(TuneWanted))]
[JsonSerializable(typeof(FigureWanted))]
[JsonSerializable(typeof(bool?))]
[JsonSerializable(typeof(KeepWanted))]
[JsonSerializable(typeof(SaveWanted))]
[JsonSerializable(typeof(TitleWanted))]
[JsonSerializable(typeof(TagsWanted))]
[JsonSerializable(typeof(NameWanted))]
[JsonSerializable(typeof(AgainWanted))]
[JsonSerializable(typeof(Opened))]
[JsonSerializable(typeof(Restored))]
[JsonSerializable(typeof(Purged))]
[JsonSerializable(typeof(ShelfList))]
[JsonSerializable(typeof(ShelfHistory))]
[JsonSerializable(typeof(ShelfSaved))]
[JsonSerializable(typeof(ProgressReport))]
[JsonSerializable(typeof(PlayerForgotten))]
[JsonSerializable(typeof(TakeWish))]
[JsonSerializable(typeof(TakeBegun))]
[JsonSerializable(typeof(TakePlayed))]
[JsonSerializable(typeof(TakeTold))]
[JsonSerializable(typeof(DrillFound))]
[JsonSerializable(typeof(TakeSeen))]
[JsonSerializable(typeof(ValueList<TakeItem>))]
[JsonSerializable(typeof(bool?))]
[JsonSerializable(typeof(double?))]
[JsonSerializable(typeof(Fault))]
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(int?))]
[JsonSerializable(typeof(byte[]))]
internal sealed partial class WebJson : JsonSerializerContext
{
    public static void Apply(JsonSerializerOptions options)
    {
        options.NumberHandling = JsonNumberHandling.Strict;
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.RespectNullableAnnotations = true;
        options.RespectRequiredConstructorParameters = true;
        options.TypeInfoResolverChain.Insert(0, Default);
    }
}
