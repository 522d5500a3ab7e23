using System.Numerics;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Settles what single bars cannot: a metre and a key where the file gives none, how long each bar is, and where chord
/// symbols stand in it.
/// </summary>
internal static class BarFitting
{
    private const int MostChordsSpread = 64;

    /// <param name="asWritten">Each bar is as long as what it holds, whatever its metre.</param>
    public static void Apply(List<WrittenBar> bars, Findings findings, bool asWritten = false)
    {
        SupplyMetres(bars, findings);
        SupplyKeys(bars, findings);
        for (var i = 0; i < bars.Count; i++)
        {
            bars[i].Length = asWritten && !bars[i].Extent.IsZero ? bars[i].Extent : LengthOf(bars, i, findings);
        }
        PlaceChords(bars, findings);
    }

    private static void SupplyMetres(List<WrittenBar> bars, Findings findings)
    {
        var without = bars.TakeWhile(b => b.Metre is null && !b.SenzaMisura).ToList();
        if (without.Count > 0)
        {
            var metre = CommonestMetre(without);
            findings.Note(without[0].Place, MusicXmlMessages.NoTime(metre));
            without.ForEach(b => b.Metre = metre);
        }
        var told = false;
        Metre? last = null;
        foreach (var bar in bars)
        {
            if (bar.Metre is null)
            {
                bar.Metre = MetreOf(bar.Extent) ?? last ?? Metre.FourFour;
                if (!told)
                {
                    findings.Note(bar.Place, MusicXmlMessages.SenzaMisura);
                    told = true;
                }
            }
            last = bar.Metre;
        }
    }

    // The metre that most bars would fill; pick-ups and bars too short for any metre have no vote.
    private static Metre CommonestMetre(List<WrittenBar> bars) =>
        bars.Where((b, i) => !b.Implicit && (i > 0 || bars.Count == 1) && b.Extent >= new ScoreTime(3, 8))
            .Select(b => MetreOf(b.Extent))
            .OfType<Metre>()
            .GroupBy(m => m)
            .OrderByDescending(g => g.Count())
            .Select(g => g.Key)
            .FirstOrDefault(Metre.FourFour);

    private static Metre? MetreOf(ScoreTime length)
    {
        var unit = Math.Max(4, length.Denominator);
        var count = length * unit;
        return !length.IsZero && unit <= 64 && BitOperations.IsPow2(unit) && count.Numerator <= 64
            ? new Metre((int)count.Numerator, (int)unit)
            : null;
    }

    private static void SupplyKeys(List<WrittenBar> bars, Findings findings)
    {
        var without = bars.TakeWhile(b => b.Key is null).ToList();
        if (without.Count == 0)
        {
            return;
        }
        // The signature that holds most notes; the plainest of equals.
        var tones = without.SelectMany(b => b.Notes).Select(n => n.Pitch?.Tone).OfType<Tone>().ToList();
        var key = Enumerable
            .Range(-7, 15)
            .Select(s => Key.FromSignature(s, Mode.Major))
            .OrderByDescending(k => tones.Count(k.Contains))
            .ThenBy(k => Math.Abs(k.Signature))
            .First();
        findings.Note(without[0].Place, MusicXmlMessages.NoKey(key));
        without.ForEach(b => b.Key = key);
    }

    private static ScoreTime LengthOf(List<WrittenBar> bars, int index, Findings findings)
    {
        var bar = bars[index];
        var full = bar.Metre!.Value.BarLength; // supplied above
        if (bar.SenzaMisura)
        {
            return bar.Extent.IsZero ? full : bar.Extent;
        }
        if (bar.Extent.IsZero || bar.Extent == full)
        {
            return full;
        }
        if (bar.Extent > full)
        {
            // Some write a rest for the bar as long as a whole note in any metre.
            if (bar.Notes.TrueForAll(n => n.Pitch is null) && bar.Notes.Exists(n => n.WholeBar))
            {
                return full;
            }
            findings.Warn(bar.Place, MusicXmlMessages.BarOverfull(bar.Extent, bar.Metre.Value));
            return bar.Extent;
        }
        if (MayBeShort(bars, index, full))
        {
            return bar.Extent;
        }
        findings.Warn(bar.Place, MusicXmlMessages.BarPadded(bar.Extent, bar.Metre.Value));
        return full;
    }

    // Pick-ups, last bars that complete them, and bars split by a repeat or an ending, or into two that make one.
    private static bool MayBeShort(List<WrittenBar> bars, int index, ScoreTime full)
    {
        var bar = bars[index];
        if (index == 0 || index == bars.Count - 1 || bar.Implicit || bar.RepeatStart || bar.RepeatEnd > 0)
        {
            return true;
        }
        var (before, after) = (bars[index - 1], bars[index + 1]);
        return before.RepeatEnd > 0
            || after.RepeatStart
            || !before.Ending.Equals(bar.Ending)
            || !after.Ending.Equals(bar.Ending)
            || before.Extent + bar.Extent == full
            || bar.Extent + after.Extent == full;
    }

    private static void PlaceChords(List<WrittenBar> bars, Findings findings)
    {
        for (var i = 0; i < bars.Count; i++)
        {
            var bar = bars[i];
            Spread(bar, i + 1 < bars.Count ? bars[i + 1] : null, findings);
            foreach (var chord in bar.Chords.Where(c => c.At >= bar.Length))
            {
                var over = chord.At - bar.Length;
                if (i + 1 < bars.Count && over < ScoreTime.Max(bars[i + 1].Extent, ScoreTime.Quarter))
                {
                    findings.Note(chord.Place, MusicXmlMessages.ChordMovedToNextBar);
                    bars[i + 1].Chords.Add(chord with { At = over });
                }
                else
                {
                    findings.Warn(chord.Place, MusicXmlMessages.ChordOutsideBar);
                }
            }
            bar.Chords.RemoveAll(c => c.At >= bar.Length);
            bar.Chords.Sort((a, b) => a.At.CompareTo(b.At));
        }
    }

    // Symbols written one after the other before the same note share its time evenly, to the nearest sixteenth.
    private static void Spread(WrittenBar bar, WrittenBar? next, Findings findings)
    {
        if (bar.Chords.Count > MostChordsSpread)
        {
            return;
        }
        foreach (var group in bar.Chords.GroupBy(c => c.At).Where(g => g.Count() > 1).ToList())
        {
            var until = bar
                .Notes.Where(n => !n.Grace)
                .Select(n => n.At)
                .Concat(bar.Chords.Select(c => c.At))
                .Where(at => at > group.Key)
                .Append(bar.Length)
                .Min();
            var sharing = group.ToList();
            if (Repeats(sharing[^1], bar, next, until))
            {
                findings.Note(sharing[^1].Place, MusicXmlMessages.ChordRepeatedAtNextNote);
                bar.Chords.Remove(sharing[^1]);
                sharing.RemoveAt(sharing.Count - 1);
            }
            if (until <= group.Key || sharing.Count == 1)
            {
                continue;
            }
            findings.Note(sharing[0].Place, MusicXmlMessages.ChordsShareNote);
            var step = (until - group.Key) / sharing.Count;
            foreach (var (index, chord) in sharing.Index())
            {
                var at = group.Key + ScoreTime.Sixteenth * (step * index).Round(ScoreTime.Sixteenth);
                bar.Chords[bar.Chords.IndexOf(chord)] = chord with { At = at };
            }
        }
    }

    // Some programs write a symbol twice: before the note that precedes its place, and at its place.
    private static bool Repeats(WrittenChord chord, WrittenBar bar, WrittenBar? next, ScoreTime until) =>
        (until == bar.Length ? next?.Chords.Find(c => c.At.IsZero) : bar.Chords.Find(c => c.At == until))?.Chord
        == chord.Chord;
}
