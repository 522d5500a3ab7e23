using Stridewright.Formats.Parts;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>The voices of a tune in the order in which V: names them, and which of them carries the tune.</summary>
internal sealed class AbcVoices(AbcFindings findings)
{
    private readonly List<AbcVoice> _all = [];

    public IReadOnlyList<AbcVoice> All => _all;

    /// <summary>The voice that a V: field names, a new one where there is none yet, with what the field says of it.</summary>
    public AbcVoice Take(AbcVoiceField field, AbcSpot spot, Func<AbcVoice> make)
    {
        var voice = Named(field.Id, spot, make);
        voice.Label = voice.Label with
        {
            Name = field.Name ?? voice.Label.Name,
            Abbreviation = field.Subname ?? voice.Label.Abbreviation,
        };
        voice.Clef = AbcClef.Read(field.Words, voice.Clef, out var bad);
        if (bad is not null)
        {
            findings.Warn(spot, AbcMessages.BadProperty(bad));
        }
        return voice;
    }

    /// <summary>The voice that carries the tune: the one asked for; else the one that is called like a tune, else the
    /// first with words, else the first with chord symbols, else the first with notes, percussion aside. Null, with the
    /// reason among the findings, when there is none.</summary>
    public AbcVoice? Choose(string? asked, AbcSpot start)
    {
        if (asked is not null)
        {
            return Asked(asked, start);
        }
        var sounding = _all.Where(v => v.HasNotes && v.Bars.Count > 0 && !v.Clef.IsPercussion).ToList();
        if (sounding.Count == 0)
        {
            sounding = _all.Where(v => v.HasChords).Take(1).ToList();
            if (sounding.Count == 0)
            {
                findings.LeaveOut(start, AbcMessages.NoNotes);
                return null;
            }
            findings.Warn(start, AbcMessages.ChordsOnly);
        }
        var taken = TuneSigns.Likeliest(
            sounding,
            (v, sign) =>
                sign switch
                {
                    TuneSign.Name => v.Label.IsTuneName,
                    TuneSign.Words => v.HasLyrics,
                    _ => v.HasChords,
                },
            out var sign
        );
        if (_all.Count(v => v.HasNotes) > 1)
        {
            findings.Add(Severity.Note, start, AbcMessages.TuneVoice(taken.Label, TuneSigns.Text(sign), Labels()));
        }
        return taken;
    }

    /// <summary>Chord symbols, parts and repeats that stand in another voice than the tune's, bar by bar.</summary>
    public ValueList<TuneBar> Borrow(AbcVoice taken, ValueList<TuneBar> bars)
    {
        var others = _all.Where(v => v != taken && v.Bars.Count > 0).ToList();
        if (!bars.Any(b => b.Chords.Count > 0) && others.Where(v => v.HasChords).MaxBy(v => v.ChordCount) is { } chords)
        {
            findings.Add(Severity.Note, taken.Bars[0].Spot, AbcMessages.ChordsFrom(chords.Label));
            bars = Zip(
                bars,
                chords,
                (to, from) => to with { Chords = from.Chords.Where(c => c.At < to.Length).ToValueList() }
            );
        }
        if (
            !bars.Any(b => b.Section is not null)
            && others.Find(v => v.Bars.Exists(b => b.Section is not null)) is { } parts
        )
        {
            bars = Zip(bars, parts, (to, from) => to with { Section = from.Section });
        }
        if (!bars.Any(HasForm) && others.Find(v => v.Bars.Exists(b => b.RepeatEnd > 0)) is { } form)
        {
            bars = Zip(bars, form, (to, from) => to with { Marks = from.Marks });
        }
        return bars;
    }

    private static bool HasForm(TuneBar bar) => bar.Marks is not { RepeatStart: false, RepeatEnd: 0, Ending.Count: 0 };

    private static ValueList<TuneBar> Zip(ValueList<TuneBar> bars, AbcVoice other, Func<TuneBar, TuneBar, TuneBar> take)
    {
        var others = new AbcBars(other.Bars, new AbcDirectives(), new AbcFindings()).Build(false);
        return bars.Select((b, i) => i < others.Count ? take(b, others[i]) : b).ToValueList();
    }

    private List<PartLabel> Labels() => _all.Select(v => v.Label).ToList();

    private AbcVoice? Asked(string asked, AbcSpot start)
    {
        var labels = Labels();
        var wish = PartChoice.Find(labels, asked);
        if (wish is { Part: -1, Voice: { } name })
        {
            wish = PartChoice.Find(labels, name); // ABC has no voices inside voices
        }
        if (wish is not { Part: >= 0, Voice: null })
        {
            findings.Add(Severity.Error, start, AbcMessages.NoSuchVoice(asked, labels));
            return null;
        }
        var voice = _all[wish.Value.Part];
        if (voice.Bars.Count == 0 || !(voice.HasNotes || voice.HasChords))
        {
            findings.Add(Severity.Error, start, AbcMessages.SilentVoice(voice.Label));
            return null;
        }
        if (labels.Count > 1)
        {
            findings.Add(Severity.Note, start, AbcMessages.TuneVoice(voice.Label, AbcMessages.AsAsked, labels));
        }
        return voice;
    }

    private AbcVoice Named(string id, AbcSpot spot, Func<AbcVoice> make)
    {
        if (_all.Find(v => v.Label.Id == id) is { } known)
        {
            return known;
        }
        var voice = make();
        voice.Label = new PartLabel(_all.Count + 1, id, "", "");
        if (_all.Count < AbcLimits.Voices)
        {
            _all.Add(voice);
        }
        else
        {
            findings.Once(Severity.Warning, spot, AbcMessages.TooManyVoices(AbcLimits.Voices));
        }
        return voice;
    }
}
