using System.Globalization;

namespace Stridewright.Formats.Parts;

/// <summary>What a part or voice of a file is called.</summary>
/// <param name="Number">Place from the top of the score, from 1.</param>
/// <param name="Id">The file's own mark for it; may be empty.</param>
/// <param name="Name">As printed before its first system; may be empty.</param>
/// <param name="Abbreviation">As printed before the later systems; may be empty.</param>
internal sealed record PartLabel(int Number, string Id, string Name, string Abbreviation)
{
    // Common practice: how a part that carries the tune is called.
    private static readonly string[] TuneWords =
    [
        "melod",
        "tune",
        "lead",
        "voice",
        "vocal",
        "vox",
        "voix",
        "voce",
        "sing",
        "song",
        "solo",
        "soprano",
        "canto",
        "gesang",
        "chant",
    ];

    private static readonly string[] BesideTheTune = ["back", "harmon", "second", "obbligato", "descant", "counter"];

    /// <summary>True when it is called like a part that carries the tune: voice, melody, lead …</summary>
    public bool IsTuneName =>
        Words(Name).Any(w => Starts(w, TuneWords)) && !Words(Name).Any(w => Starts(w, BesideTheTune));

    /// <summary>Such as <c>2 'Flute'</c>; without a name the id.</summary>
    public override string ToString()
    {
        var number = Number.ToString(CultureInfo.InvariantCulture);
        var shown =
            Name.Length > 0 ? Name
            : Abbreviation.Length > 0 ? Abbreviation
            : Id;
        return shown.Length == 0 || shown == number ? number : $"{number} '{shown}'";
    }

    private static string[] Words(string name) =>
        name.Split([' ', '-', '.', ',', '/', '(', ')'], StringSplitOptions.RemoveEmptyEntries);

    private static bool Starts(string word, string[] stems) =>
        stems.Any(s => word.StartsWith(s, StringComparison.OrdinalIgnoreCase));
}
