using System.Buffers;
using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Reads words, tempo, dynamics and swing (MusicXML 4.0, <c>direction</c> and <c>sound</c>).</summary>
internal static class DirectionReader
{
    private static readonly SearchValues<char> NumberCharacters = SearchValues.Create("0123456789.");

    private static readonly (string Name, Routes Route)[] RoutesOfSound =
    [
        ("segno", Routes.Segno),
        ("dacapo", Routes.DaCapo),
        ("dalsegno", Routes.DalSegno),
        ("fine", Routes.Fine),
        ("tocoda", Routes.ToCoda),
        ("coda", Routes.Coda),
    ];

    private static readonly HashSet<string> Jumps = ["dacapo", "dalsegno", "segno", "coda", "tocoda", "fine"];

    /// <summary>What a direction or a bare sound element says; null when nothing of use.</summary>
    public static Direction? Read(Element element, ScoreTime at, Place place, Findings findings)
    {
        var sound = element.Name == "sound" ? element : element.Child("sound");
        var types = element.All("direction-type").ToList();
        if (IsFootnote(element, types))
        {
            return null;
        }
        var words = Element.Clean(string.Join(' ', types.SelectMany(t => t.All("words")).Select(w => w.Text)));
        var dynamic = types.SelectMany(t => t.All("dynamics")).SelectMany(d => d.Children).FirstOrDefault()?.Name;
        var direction = new Direction(at)
        {
            Words = words,
            Dynamic = dynamic == "other-dynamics" ? null : Element.Clean(dynamic),
            Pedal = types.Select(t => t.Child("pedal")).FirstOrDefault(p => p is not null)?["type"] switch
            {
                "start" => true,
                "stop" => false,
                _ => null,
            },
            Swing = ReadSwing(sound?.Child("swing")),
        };
        direction = WithTempo(direction, types, sound, place, findings);
        if (Jump(types, sound) is { } jump)
        {
            findings.Note(place, MusicXmlMessages.JumpNotFollowed(jump));
        }
        return direction == new Direction(at) ? null : direction;
    }

    // Numbers alone under the staves call notes that are not part of the music.
    private static bool IsFootnote(Element element, List<Element> types) =>
        element["placement"] == "below"
        && types is [{ } type]
        && type.Children.ToList() is [{ Name: "words" } words]
        && words.Text.Length > 0
        && words.Text.All(c => char.IsAsciiDigit(c) || c is ',' or ' ');

    /// <summary>The rehearsal letter of a direction, which names a section.</summary>
    public static string? ReadSection(Element direction) =>
        Element.Clean(
            direction.All("direction-type").SelectMany(t => t.All("rehearsal")).Select(r => r.Text).FirstOrDefault()
        );

    /// <summary>Where the music goes, as it sounds (MusicXML 4.0, <c>sound</c>).</summary>
    public static Routes ReadRoutes(Element element)
    {
        var sound = element.Name == "sound" ? element : element.Child("sound");
        var routes = Routes.None;
        foreach (var (name, route) in RoutesOfSound)
        {
            routes |= sound?[name] is { } value && value != "no" ? route : Routes.None;
        }
        return routes;
    }

    private static Direction WithTempo(
        Direction direction,
        List<Element> types,
        Element? sound,
        Place place,
        Findings findings
    )
    {
        var mark = types.Select(t => t.Child("metronome")).FirstOrDefault(m => m is not null);
        if (mark?.TextOf("per-minute") is { } text && NoteValues.PartOf(mark.TextOf("beat-unit")) is { } part)
        {
            var unit = new NoteValue(part, Math.Min(mark.All("beat-unit-dot").Count(), 3));
            if (Tempo(text) is { } beats && InRange(beats * unit.Length.ToQuarters()))
            {
                return direction with { BeatsPerMinute = beats, BeatUnit = unit };
            }
            findings.Warn(place, MusicXmlMessages.BadTempo(Element.Clean(text)));
        }
        if (sound?["tempo"] is { } played)
        {
            if (Tempo(played) is { } quarters && InRange(quarters))
            {
                return direction with { BeatsPerMinute = quarters };
            }
            findings.Warn(place, MusicXmlMessages.BadTempo(Element.Clean(played)));
        }
        return direction;
    }

    private static bool InRange(double quarters) => quarters is >= 5 and <= 1000;

    // The first number of texts such as "120", "c. 96" or "100-110".
    private static double? Tempo(string text)
    {
        var from = text.AsSpan().IndexOfAnyInRange('0', '9');
        if (from < 0)
        {
            return null;
        }
        var rest = text.AsSpan(from);
        var to = rest.IndexOfAnyExcept(NumberCharacters);
        var number = (to < 0 ? rest : rest[..to]).TrimEnd('.');
        return double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? value
            : null;
    }

    private static (int Long, int Short)? ReadSwing(Element? swing)
    {
        if (swing is null)
        {
            return null;
        }
        if (swing.Has("straight"))
        {
            return (1, 1);
        }
        return
            int.TryParse(swing.TextOf("first"), NumberStyles.None, CultureInfo.InvariantCulture, out var first)
            && int.TryParse(swing.TextOf("second"), NumberStyles.None, CultureInfo.InvariantCulture, out var second)
            && first is >= 1 and <= 100
            && second is >= 1 and <= 100
            ? (first, second)
            : null;
    }

    private static string? Jump(List<Element> types, Element? sound) =>
        types.SelectMany(t => t.Children).Select(c => c.Name).FirstOrDefault(n => n is "segno" or "coda")
        ?? (sound is null ? null : Jumps.FirstOrDefault(j => sound[j] is not null));
}
