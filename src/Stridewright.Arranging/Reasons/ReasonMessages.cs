using System.Globalization;
using System.Text.RegularExpressions;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Every reason in a musician's words, a line each.</summary>
internal static partial class ReasonMessages
{
    public static string Of(Reason reason) => Signs().Replace(Words(reason), m => m.Value == "#" ? "♯" : "♭");

    // Flats and sharps of chord symbols, as signs.
    [GeneratedRegex(@"(?<=\b[A-G])[b#]|[b#](?=[0-9])")]
    private static partial Regex Signs();

    private static string Words(Reason reason) =>
        reason switch
        {
            BassReason r => "bass: " + string.Join(", ", r.Strokes.Select((s, i) => Bass(r.Strokes, i))),
            VoicingReason r => Voicing(r),
            ThinChordReason r => $"two notes: {Keys(r.Fuller)} {Against(r.Ground)}",
            RunReason r => $"run {Keys(r.Notes)} by step into {Name(r.Into)}",
            BreakReason r =>
                $"break: the left hand rests, the right is busy enough alone ({Count(r.RightOnsets, "stroke")})",
            ShiftReason r => Shift(r),
            FigureReason r => "short-long-short " + string.Join(" and ", Figures(r)),
            MotifReason r => $"rhythm as in bar {r.LikeNumber}",
            FillReason r => Fill(r),
            TextureReason r => Texture(r),
            CrushedReason r => $"{Name(r.Crushed)} crushed into {Name(r.Into)}: one finger slides from black to white",
            HarmonyReason r => ArrangingMessages.HarmonyChanged(r.Change),
            PartReason r => Part(r),
            LeftMannerReason r => Asked(Manners.Left.First(m => m.Value == r.Manner).Key, r.FellBack),
            RightMannerReason r => Asked(Manners.Right.First(m => m.Value == r.Manner).Key, r.FellBack),
            KeptReason r => $"{Word(r.Kept)} kept as it was",
            LimitReason r => Limit(r),
            _ => throw new ArgumentOutOfRangeException(nameof(reason)),
        };

    /// <summary>A reason as a note by itself.</summary>
    public static string Note(string bar, Reason reason) =>
        (bar == "0" ? "pick-up" : "bar " + bar) + $": {reason.Sentence}";

    private static string Bass(ValueList<BassStroke> strokes, int index)
    {
        var stroke = strokes[index];
        var sameChord = index > 0 && strokes[index - 1].Chord.Equals(stroke.Chord);
        var of = sameChord ? "" : $" of {stroke.Chord}";
        var role = stroke.Role switch
        {
            BassRole.Root => "root" + of,
            BassRole.SlashBass => $"as {stroke.Chord} names it",
            BassRole.FifthUnderTonic => $"fifth{of}, after the diminished chord on the raised fourth",
            BassRole.Fifth => "fifth" + of,
            BassRole.Third => "third" + of,
            BassRole.ChordTone => "tone" + of,
            BassRole.Pedal => "pedal, held on under " + stroke.Chord,
            BassRole.StepTo => $"step to {Name(stroke.Neighbour!.Value)}",
            BassRole.StepFrom => $"step from {Name(stroke.Neighbour!.Value)}",
            _ => "outside the chord",
        };
        var form = stroke.Form switch
        {
            BassForm.Octave => ", octave",
            BassForm.Tenth => ", tenth",
            BassForm.RolledTenth => ", rolled tenth",
            _ => "",
        };
        return $"{Name(stroke.Pitches[0])} ({role}{form})";
    }

    private static string Voicing(VoicingReason r)
    {
        var why = r.Ground switch
        {
            VoicingGround.Stays => "stays as it was",
            VoicingGround.RootDue => "the harmony comes in with it, so its bass lies lowest",
            VoicingGround.Opens => "no chord right before it",
            VoicingGround.Nearest => "nearest to the chord before, "
                + Semitones(r.Movement)
                + (r.Held > 0 ? ", " + Count(r.Held, "note") + " held" : ""),
            _ =>
                $"{Semitones(r.Movement)} from the chord before; {Keys(r.Nearer)} is nearer ({Semitones(r.NearerMovement)}) but {Against(r.Ground)}",
        };
        var left = string.Concat(r.Omitted.Select(o => $"; no {Name(o.Tone)}, {Missing(o.Ground)}"));
        return $"chord {Keys(r.Pitches)} of {r.Chord}: {why}{left}";
    }

    private static string Against(VoicingGround ground) =>
        ground switch
        {
            VoicingGround.Home => "this is its place in the line of chords for all levels",
            VoicingGround.Register => "lies further from the middle register",
            VoicingGround.RightHand => "comes in the way of the right hand",
            VoicingGround.Strain => "strains the hand",
            VoicingGround.Way => "is a longer way from the basses",
            VoicingGround.NextChord => "leads less well to the next chord",
            VoicingGround.Sound => "sounds thicker",
            _ => "weighs as much: variety chose",
        };

    private static string Missing(OmissionGround ground) =>
        ground switch
        {
            OmissionGround.InTheBass => "the bass has it",
            OmissionGround.Fifth => "the fifth is missed least",
            OmissionGround.AddedNote => "an added note",
            _ => "the others are enough",
        };

    private static string Shift(ShiftReason r)
    {
        var place = r.Over switch
        {
            PlainPlace.BarLine => "the bar line",
            PlainPlace.MidBar => "mid-bar",
            PlainPlace.Beat => "the beat",
            _ => "the off-beat",
        };
        var moved = r.Early
            ? $"{Name(r.Pitch)} {Length(r.By)} early, {(r.SoundsOn ? "held over" : "before")} {place}"
            : $"{Name(r.Pitch)} {Length(r.By)} late, after {place}";
        return moved
            + (r.Early && r.Chord is { } chord ? $": it belongs to {chord} there" : "")
            + (r.Syllable is { Length: > 0 } syllable ? $" and is stressed (\"{syllable}\")" : "");
    }

    private static IEnumerable<string> Figures(FigureReason r)
    {
        if (r.Untied > 0)
        {
            yield return r.Untied > 1 ? "in both halves of the bar" : "inside a half bar";
        }
        if (r.MidBar)
        {
            yield return "across mid-bar";
        }
        if (r.BarLine)
        {
            yield return "across the bar line";
        }
    }

    private static string Fill(FillReason r) =>
        Count(r.Count, "note")
        + " put in between the tune's"
        + (r.Under is { } held ? $"; {Name(held)} sounds on above" : "");

    private static string Texture(TextureReason r)
    {
        var kind = r.Texture switch
        {
            TuneTexture.Thirds => "thirds",
            TuneTexture.Sixths => "sixths",
            TuneTexture.TwoNotes => "two notes",
            TuneTexture.Octaves => "octaves",
            TuneTexture.FullOctaves => "octaves with inner notes",
            _ => "chords",
        };
        var why = r.Ground switch
        {
            TextureGround.Asked => ", as asked",
            TextureGround.Lasts => ", as in the bar before",
            TextureGround.Accents => ", on accents alone",
            _ => "",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{kind} on {r.Count} of {r.Of} strokes{why}");
    }

    private static string Part(PartReason r) =>
        r.Part switch
        {
            "Intro" => "introduction: the last phrase of the tune",
            "Vamp" => "vamp till ready: tonic and dominant",
            "Tag" => "tag: the end once more",
            "End" => "close on the tonic",
            "Trio" => "trio: a fourth higher",
            _ when r.Before == 0 => $"strain {r.Part}",
            _ => $"strain {r.Part} again: its rhythms are drawn anew",
        };

    private static string Asked(string word, bool fellBack) =>
        $"{word.Replace('-', ' ')} asked for" + (fellBack ? "; these hands cannot wholly play it here" : "");

    private static string Limit(LimitReason r)
    {
        var keys = Keys(r.Keys);
        return r.Kind switch
        {
            LimitKind.OctaveOut => Text($"no octave {keys}: it needs {r.Need:0} mm, this hand has {r.Limit:0}"),
            LimitKind.OctaveUnwanted => "no octave: none are wanted",
            LimitKind.OctaveStrained => Text(
                $"no octave {keys}: its {r.Need:0} mm strain this hand, {r.Limit:0} lie without strain"
            ),
            LimitKind.OctaveLeap => Text(
                $"no octave {keys}: its leap asks {r.Need:0.0} bits a second, {r.Limit:0.#} is the most"
            ),
            LimitKind.TenthRolled => Text($"{keys} rolled: it needs {r.Need:0} mm, this hand has {r.Limit:0}"),
            LimitKind.Thinned => "single notes: what was thicker could not be played here",
            LimitKind.Slower => Text($"tempo {r.Limit:0} instead of {r.Need:0}: the leaps ask for it"),
            _ => Text(
                $"{Word(r.Bound!.Value)}: strained stretches were made {r.Need:0} times dearer to keep them rare"
            ),
        };
    }

    private static string Length(ScoreTime by) =>
        by.Numerator != 1
            ? by.ToString()
            : by.Denominator switch
            {
                2 => "a half",
                4 => "a quarter",
                8 => "an eighth",
                16 => "a sixteenth",
                32 => "a thirty-second",
                _ => by.ToString(),
            };

    private static string Semitones(int count) => Count(count, "semitone");

    private static string Count(int count, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");

    private static string Word(Hand hand) => hand == Hand.Right ? "right hand" : "left hand";

    private static string Keys(ValueList<Pitch> keys) => string.Join('-', keys.Select(Name));

    private static string Name(Pitch pitch) => Name(pitch.Tone);

    private static string Name(Tone tone) =>
        tone.ToString().Replace("#", "♯", StringComparison.Ordinal).Replace("b", "♭", StringComparison.Ordinal);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
