using System.Text.RegularExpressions;
using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Proof.Tests.Abc;

/// <summary>
/// Every ABC tune of the corpus against the engraving library's own ABC reader, note for note in written order. Where they
/// differ it is the library that departs from the ABC standard 2.1; each kind of difference is named and counted, so that
/// one more or less shows.
/// </summary>
public sealed partial class AbcImportTests(AbcImport library)
{
    private const string Tuplet = "4.13: (3 takes the next three notes; the library takes those up to the beam's end",
        ChordLength = "4.17: the length after a chord counts; the library drops it",
        ChordTie = "4.17, 4.11: a tie after a note of a chord; the library strikes the note again",
        OtherTie = "4.11: a tie joins notes of one pitch; the library ties to another and does not strike it",
        Grace = "4.12: grace notes take no time; the library strikes them in time";

    // Times part at this note; up to it they are the same, and so are the notes but for the reasons below.
    private static readonly Dictionary<string, (int From, string Reason)> TimesPart = new()
    {
        ["barn-dance-2"] = (11, Tuplet),
        ["barrys-favourite"] = (68, Tuplet),
        ["clear-the-way"] = (39, ChordTie),
        ["cold-frosty-morning"] = (1, ChordLength),
        ["falling-about"] = (6, Tuplet),
        ["garfields-blackberry-blossom"] = (58, OtherTie),
        ["ill-twine-mid-the-ringlets"] = (4, Grace),
        ["jingle-at-the-window-tidy-o"] = (36, OtherTie),
        ["lady-of-ardross"] = (15, Tuplet),
        ["mazawattee-tea-break"] = (111, ChordTie),
        ["moonlight"] = (105, ChordLength),
        ["mrs-willis"] = (15, Tuplet),
        ["the-lark-in-the-clear-air"] = (49, Tuplet),
        ["the-waterloo-dance"] = (102, OtherTie),
    };

    // How many notes differ in pitch, by reason.
    private static readonly Dictionary<Cause, int> Counts = new()
    {
        [Cause.EarlierAccidental] = 27,
        [Cause.AccidentalOfKeyField] = 5,
        [Cause.LaterKeyField] = 105,
    };

    private enum Cause
    {
        /// <summary>11.3: an accidental holds to the end of its bar; the library applies it to its own note only.</summary>
        EarlierAccidental,

        /// <summary>4.6: accidentals listed in a K: field; the library ignores them.</summary>
        AccidentalOfKeyField,

        /// <summary>3.1.14: a K: field changes the key from there on; the library keeps the first one.</summary>
        LaterKeyField,
    }

    [Fact]
    public void Notes_are_those_of_the_library_but_where_it_departs_from_the_standard()
    {
        var files = Corpus.Files("corpus/abc", ".abc");
        Assert.True(files.Count >= 60);
        var same = 0;
        var causes = new List<Cause>();
        foreach (var file in files)
        {
            var name = Path.GetFileNameWithoutExtension(file);
            var text = File.ReadAllText(file);
            var ours = Read(text);
            var theirs = library.Read(text, fresh: ours[0].Key.Signature == 0);
            var before = causes.Count;
            var until = ours.Count;
            if (TimesPart.TryGetValue(name, out var part))
            {
                until = part.From;
                Assert.False(
                    ours.Count == theirs.Count
                        && Enumerable
                            .Range(until, ours.Count - until)
                            .All(i => SameTime(ours[i].At, theirs[i].At) && ours[i].Pitch.Midi == theirs[i].Key),
                    $"{name} no longer differs: {part.Reason}"
                );
            }
            else
            {
                Assert.True(ours.Count == theirs.Count, $"{name}: {ours.Count} notes, theirs {theirs.Count}");
            }
            var headKey = HeadKey(text);
            for (var i = 0; i < until; i++)
            {
                Assert.True(SameTime(ours[i].At, theirs[i].At), $"{name} {i}: {ours[i].At}, theirs {theirs[i].At}");
                if (ours[i].Pitch.Midi != theirs[i].Key)
                {
                    var why = Why(ours, i, theirs[i].Key, headKey, text);
                    Assert.True(
                        why is not null,
                        $"{name} {i}, bar {ours[i].Bar}: {ours[i].Pitch}, theirs {theirs[i].Key}"
                    );
                    causes.Add(why.Value);
                }
            }
            same += until == ours.Count && causes.Count == before ? 1 : 0;
        }
        Assert.Equal(
            Counts.OrderBy(c => c.Key).Select(c => (c.Key, c.Value)),
            causes.GroupBy(c => c).OrderBy(c => c.Key).Select(c => (c.Key, c.Count()))
        );
        Assert.Equal(57, same);
    }

    // Their key must be what our letter gives without the thing that they leave out.
    private static Cause? Why(List<Note> ours, int index, int theirs, Key head, string text)
    {
        var note = ours[index];
        int Under(Key key) => (note.Pitch with { Tone = key.ToneOf(note.Pitch.Step) }).Midi;
        var isAltered = note.Pitch.Midi != Under(note.Key);
        return isAltered && theirs == Under(note.Key)
            ? KeyWithAccidentals().IsMatch(text)
                ? Cause.AccidentalOfKeyField
                : ours.Take(index).Any(n => n.Bar == note.Bar && n.Pitch.Tone == note.Pitch.Tone)
                    ? Cause.EarlierAccidental
                    : null
            : !isAltered && theirs == Under(head)
                ? Cause.LaterKeyField
                : null;
    }

    // The tunes' first K: fields are all plain: a letter, perhaps a sign, perhaps m.
    private static Key HeadKey(string text)
    {
        var field = KeyField().Match(text);
        var tonic = Tone.Parse(field.Groups["tonic"].Value);
        return field.Groups["mode"].Value switch
        {
            "" => new Key(tonic, Mode.Major),
            "m" => new Key(tonic, Mode.Minor),
            var mode => new Key(
                tonic,
                Enum.GetValues<Mode>().Single(m => m.ToString().StartsWith(mode, StringComparison.OrdinalIgnoreCase))
            ),
        };
    }

    private static bool SameTime(double a, double b) => Math.Abs(a - b) < 0.02;

    // Tied notes as one, as the library plays them.
    private static List<Note> Read(string abc)
    {
        var notes = new List<Note>();
        var (now, tied) = (ScoreTime.Zero, false);
        foreach (var (bar, index) in AbcReader.Read(new StringReader(abc)).Value![0].Bars.Select((b, i) => (b, i)))
        {
            foreach (var note in bar.Notes)
            {
                if (!tied)
                {
                    notes.Add(new Note((now + note.At).ToQuarters(), note.Pitch, index, bar.Key));
                }
                tied = note.TiedToNext;
            }
            now += bar.Length;
        }
        return notes;
    }

    private sealed record Note(double At, Pitch Pitch, int Bar, Key Key);

    [GeneratedRegex(@"^K: *(?<tonic>[A-G][b#]?)(?<mode>[A-Za-z]{0,3})", RegexOptions.Multiline)]
    private static partial Regex KeyField();

    [GeneratedRegex(@"^K:.*[ =^_][a-g]\s*$", RegexOptions.Multiline)]
    private static partial Regex KeyWithAccidentals();
}
