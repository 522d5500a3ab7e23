using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>Derives the claims about the right hand anew from the score and the plain tune.</summary>
internal sealed class RightClaims(ScoreFacts facts, PlainTune tune, ScoreTime unit)
{
    /// <summary>What is wrong with a claim; null: it is true.</summary>
    public string? Fault(Reason reason) =>
        reason switch
        {
            ShiftReason r => Shift(r),
            FigureReason r => Figure(r),
            MotifReason r => Motif(r),
            FillReason r => Fill(r),
            TextureReason r => Texture(r),
            CrushedReason r => Crushed(r),
            _ => null,
        };

    private string? Shift(ShiftReason r)
    {
        var struck = facts.Place(r.Bar, r.At);
        var plain = r.Early ? struck + r.By : struck - r.By;
        var index = ScoreFacts.IndexAt(facts.Right, struck);
        if (index < 0 || facts.Right[index].High != r.Pitch.Midi)
        {
            return "it is not struck there";
        }
        if (r.By != unit || !tune.Stands(plain, r.Pitch.Midi, unit))
        {
            return "the tune has no such note a unit away";
        }
        var bar = Array.FindLastIndex(facts.Starts, s => s <= plain);
        var at = plain - facts.Starts[bar] + facts.Lead(bar);
        var metre = facts.Score.Bars[bar].Metre;
        var over =
            plain == facts.Starts[bar] ? PlainPlace.BarLine
            : metre is { Count: 2 or 4, Unit: 4 } && at + at == metre.BarLength ? PlainPlace.MidBar
            : at.IsMultipleOf(metre.Beat) ? PlainPlace.Beat
            : PlainPlace.OffBeat;
        if (over != r.Over)
        {
            return $"its plain place is {over}";
        }
        var end = facts.Sounding.First(s => s.Hand == Hand.Right && s.Start == struck && s.Key == r.Pitch.Midi).End;
        if (r.SoundsOn != (r.Early && end > plain))
        {
            return "it sounds otherwise";
        }
        var chord = facts.ChordAt(plain).Chord;
        if (
            r.Chord is not null
                ? !r.Chord.Equals(chord) || !Has(chord, r.Pitch)
                : chord is not null && Has(chord, r.Pitch)
        )
        {
            return $"the chord at its plain place is {chord}";
        }
        return r.Syllable is not null && tune.SyllableAt(plain, r.Pitch.Midi) != r.Syllable ? "no such syllable" : null;
    }

    private static bool Has(ChordSymbol chord, Pitch pitch) =>
        chord.Tones.Append(chord.Lowest).Any(t => t.PitchClass == pitch.Midi % 12) && !chord.IsNoChord;

    // The figure's definition: two onsets, a silence and an onset on four units (Kirlin, ISMIR 2020: 1101).
    private string? Figure(FigureReason r)
    {
        var (here, next) = (Bits(r.Bar), r.Bar + 1 < facts.Score.Bars.Count ? Bits(r.Bar + 1) : "");
        var untied = (here[..4] == "1101" ? 1 : 0) + (here[4..] == "1101" ? 1 : 0);
        var line = next.Length == 8 && here[6..] == "11" && next[..2] == "01";
        return (untied, here[2..6] == "1101", line) == (r.Untied, r.MidBar, r.BarLine) ? null : $"{here}|{next}";
    }

    private string Bits(int bar)
    {
        var onsets = facts.RightIn(bar).Select(s => s.At).ToHashSet();
        var units = facts.Score.Bars[bar].Length.Per(unit);
        return string.Concat(
            Enumerable.Range(0, (int)units.Numerator).Select(u => onsets.Contains(unit * u) ? '1' : '0')
        );
    }

    private string? Motif(MotifReason r) =>
        facts.Score.Bars[r.Like].Number == r.LikeNumber
        && facts.RightIn(r.Bar).Select(s => s.At).SequenceEqual(facts.RightIn(r.Like).Select(s => s.At))
            ? null
            : "the rhythms differ";

    private string? Fill(FillReason r)
    {
        var strokes = facts.RightIn(r.Bar).ToList();
        var own = tune.StruckIn(facts.Starts[r.Bar], facts.Starts[r.Bar + 1]);
        if (strokes.Count - own != r.Count)
        {
            return $"{strokes.Count} strokes, {own} of the tune";
        }
        return
            r.Under is not { } held
            || strokes.Any(s =>
                s.High < held.Midi
                && facts.Sounding.Any(t =>
                    t.Hand == Hand.Right && t.Key == held.Midi && t.Start < s.Start && t.End > s.Start
                )
            )
            ? null
            : "nothing sounds on above";
    }

    private string? Texture(TextureReason r)
    {
        if (Thickest(r.Bar) is not var (kind, thick) || kind != r.Texture || thick.Count != r.Count)
        {
            return $"it is {Thickest(r.Bar)?.Kind}";
        }
        var ground = r.Ground switch
        {
            TextureGround.Lasts => r.Bar > 0 && Thickest(r.Bar - 1)?.Kind == kind,
            TextureGround.Accents => thick.All(IsAccent),
            _ => true,
        };
        return facts.RightIn(r.Bar).Count() != r.Of ? "the bar has other strokes"
            : ground ? null
            : $"not for {r.Ground}";
    }

    private bool IsAccent(Struck s) =>
        (s.At + facts.Lead(s.Bar)).IsMultipleOf(unit + unit) || s.End - s.Start >= unit + unit + unit;

    private (TuneTexture Kind, List<Struck> Strokes)? Thickest(int bar)
    {
        var kinds = facts.RightIn(bar).Where(s => s.Keys.Length > 1).GroupBy(Kind).ToList();
        return kinds.Count == 0
            ? null
            : kinds
                .OrderByDescending(k => k.Count())
                .ThenBy(k => k.Key)
                .Select(k => ((TuneTexture, List<Struck>)?)(k.Key, k.ToList()))
                .First();
    }

    private static TuneTexture Kind(Struck s) =>
        s.Keys.Length == 2
            ? (s.High - s.Low) switch
            {
                3 or 4 => TuneTexture.Thirds,
                8 or 9 => TuneTexture.Sixths,
                12 => TuneTexture.Octaves,
                _ => TuneTexture.TwoNotes,
            }
        : s.High - s.Low == 12 ? TuneTexture.FullOctaves
        : TuneTexture.Chords;

    private string? Crushed(CrushedReason r) =>
        facts
            .Score.Bars[r.Bar]
            .Voices.Where(v => v.Hand == Hand.Right)
            .SelectMany(v => v.Events)
            .Any(e =>
                e.At == r.At
                && e.Graces.Any(g => g.Pitch == r.Crushed)
                && e.Notes.Any(n => n.Pitch == r.Into)
                && r.Into.Midi - r.Crushed.Midi == 1
            )
            ? null
            : "nothing is crushed there";
}
