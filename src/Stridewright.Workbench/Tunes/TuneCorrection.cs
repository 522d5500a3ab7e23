using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Tunes;

/// <summary>Corrects a tune where it stands.</summary>
internal static class TuneCorrection
{
    private const int MostNotes = 64;

    /// <summary>Null, with the reason, where it cannot be.</summary>
    public static Tune? Of(Tune tune, TuneChange change, out string fault)
    {
        fault = "";
        var bar = change.Bar >= 0 && change.Bar < tune.Bars.Count ? tune.Bars[change.Bar] : null;
        var value = change.Value?.Trim() ?? "";
        switch (change.Action)
        {
            case "notes" when bar is not null:
                return Notes(bar, change.Notes ?? [], out fault) is { } notes
                    ? With(tune, change.Bar, bar with { Notes = notes })
                    : null;
            case "chords" when bar is not null:
                if (BarChords.Read(value, bar, out var word) is { } chords)
                {
                    return With(tune, change.Bar, bar with { Chords = chords });
                }
                fault = WorkbenchMessages.NoChordHere(word);
                return null;
            case "key":
                if (KeyOf(value) is { } key)
                {
                    return InKey(tune, key);
                }
                fault = WorkbenchMessages.NoKey(value);
                return null;
            case "metre":
                if (MetreOf(value) is { } metre)
                {
                    return Rebarring.Of(tune, metre, PickUp(tune));
                }
                fault = WorkbenchMessages.NoMetre(value);
                return null;
            case "pick-up":
                var length = Times.Read(value);
                if (length is { } pickUp && pickUp < tune.Bars[^1].Metre.BarLength)
                {
                    return Rebarring.Of(tune, MainMetre(tune), pickUp);
                }
                fault = WorkbenchMessages.NoPickUp(value);
                return null;
            default:
                fault = bar is null ? WorkbenchMessages.NoSuchSpot : WorkbenchMessages.NoCorrection(change.Action);
                return null;
        }
    }

    public static Metre MainMetre(Tune tune) =>
        (tune.Bars.FirstOrDefault(b => b.Length == b.Metre.BarLength) ?? tune.Bars[0]).Metre;

    /// <summary>Zero: there is none.</summary>
    public static ScoreTime PickUp(Tune tune) =>
        tune.Bars[0].Length < tune.Bars[0].Metre.BarLength ? tune.Bars[0].Length : ScoreTime.Zero;

    private static Tune With(Tune tune, int index, TuneBar bar)
    {
        var bars = tune.Bars.Select((b, i) => i == index ? bar : b).ToList();
        // A tie leads only to the same pitch.
        for (var i = 0; i < bars.Count; i++)
        {
            var next = i + 1 < bars.Count && bars[i + 1].Notes is [{ At.IsZero: true } first, ..] ? first : null;
            bars[i] = bars[i] with { Notes = Tied(bars[i].Notes, next).ToValueList() };
        }
        return tune with { Bars = bars.ToValueList() };
    }

    private static IEnumerable<TuneNote> Tied(ValueList<TuneNote> notes, TuneNote? after)
    {
        for (var i = 0; i < notes.Count; i++)
        {
            var next = i + 1 < notes.Count ? notes[i + 1] : after;
            yield return notes[i].TiedToNext && next?.Pitch != notes[i].Pitch
                ? notes[i] with
                {
                    TiedToNext = false,
                }
                : notes[i];
        }
    }

    private static ValueList<TuneNote>? Notes(TuneBar bar, IReadOnlyList<SheetStroke> sent, out string fault)
    {
        var notes = new List<TuneNote>();
        fault = WorkbenchMessages.NoStrokes(MostNotes);
        if (sent.Count > MostNotes)
        {
            return null;
        }
        foreach (var stroke in sent)
        {
            fault = WorkbenchMessages.NoStroke(stroke.At, stroke.Length, stroke.Pitches);
            if (WrittenStroke.Read(stroke.At, stroke.Length, stroke.Pitches, rolled: false) is not { } read)
            {
                return null;
            }
            // One line: of keys struck together the highest is the tune.
            var made = new TuneNote(
                read.At,
                read.Length,
                bar.Key.Contains(read.Pitches[^1].Tone) ? read.Pitches[^1] : Spelled(bar.Key, read.Pitches[^1])
            );
            var stood = bar.Notes.FirstOrDefault(n => n.At == made.At);
            notes.Add(
                stood is null
                    ? made
                    : stood with
                    {
                        Length = made.Length,
                        Pitch = stood.Pitch.Midi == made.Pitch.Midi ? stood.Pitch : made.Pitch,
                    }
            );
        }
        notes = [.. notes.OrderBy(n => n.At)];
        for (var i = 0; i < notes.Count; i++)
        {
            var end = i + 1 < notes.Count ? notes[i + 1].At : bar.Length;
            if (notes[i].At + notes[i].Length > end)
            {
                fault = WorkbenchMessages.NotesOverlap(notes[i].Pitch.ToString(), i + 1 == notes.Count);
                return null;
            }
        }
        fault = "";
        return notes.ToValueList();
    }

    private static Tune InKey(Tune tune, Key key)
    {
        var before = tune.Bars[0].Key;
        return tune with
        {
            Bars = tune
                .Bars.Select(b =>
                    b.Key != before
                        ? b
                        : b with
                        {
                            Key = key,
                            Notes = b.Notes.Select(n => n with { Pitch = Spelled(key, n.Pitch) }).ToValueList(),
                        }
                )
                .ToValueList(),
        };
    }

    private static Pitch Spelled(Key key, Pitch pitch) =>
        key.Contains(pitch.Tone) ? pitch : Pitch.At(pitch.Midi, key.Spell(pitch.Midi));

    private static Key? KeyOf(string text)
    {
        var isMinor = text.EndsWith('m') || text.EndsWith("minor", StringComparison.OrdinalIgnoreCase);
        var tonic = text.Split(' ')[0].TrimEnd('m');
        return
            Tone.TryParse(tonic, out var tone)
            && new Key(tone, isMinor ? Mode.Minor : Mode.Major) is var key
            && Math.Abs(key.Signature) <= Brief.FurthestTonic
            ? key
            : null;
    }

    private static Metre? MetreOf(string text) =>
        text.Split('/') is [var above, var below]
        && int.TryParse(above, System.Globalization.NumberStyles.None, null, out var count)
        && int.TryParse(below, System.Globalization.NumberStyles.None, null, out var unit)
        && count is >= 1 and <= 24
        && unit is 1 or 2 or 4 or 8 or 16
            ? new Metre(count, unit)
            : null;
}
