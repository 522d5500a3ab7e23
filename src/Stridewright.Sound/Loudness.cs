using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>
/// How loud each note is struck, as a MIDI velocity. The steps are our choice by ear (common practice: the tune over its
/// inner notes, the bass over its chords, the bar's start over the rest).
/// </summary>
internal static class Loudness
{
    /// <summary>Where no dynamic is given, and of mf.</summary>
    public const int Usual = 74;

    private const int Tune = 12;
    private const int Inner = -10;
    private const int Bass = 2;
    private const int OffBeatChord = -12;
    private const int BarStart = 6;
    private const int OnBeat = 2;
    private const int Accented = 14;
    private const int Crushed = -8;
    private const int Spread = 3;

    /// <summary>Velocity of a dynamic such as <c>mf</c>; null for others.</summary>
    public static int? Of(string? dynamic) =>
        dynamic switch
        {
            "ppp" => 38,
            "pp" => 46,
            "p" => 56,
            "mp" => 65,
            "mf" => Usual,
            "f" => 86,
            "ff" => 98,
            "fff" => 108,
            _ => null,
        };

    public static int Of(StruckNote note, bool highest, Course course)
    {
        var (sounding, source) = (note.Sounding, note.Source);
        var part =
            sounding.Hand == Hand.Right ? (highest && note.Voice.Number == 1 ? Tune : Inner)
            : IsOffBeatChord(note, course) ? OffBeatChord
            : Bass;
        var metre =
            course.PlaceInFullBar(sounding.Start).IsZero ? BarStart
            : course.IsOnBeat(sounding.Start) ? OnBeat
            : 0;
        var accent = source.Accent ? Accented : 0;
        return Audible(course.LoudnessAt(sounding.Start) + part + metre + accent + SpreadOf(sounding));
    }

    public static int OfCrushed(int main) => Audible(main + Crushed);

    /// <summary>A left-hand chord between the basses: two keys or more, no octave or tenth.</summary>
    public static bool IsOffBeatChord(StruckNote note, Course course)
    {
        var notes = note.Source.Notes;
        return note.Sounding.Hand == Hand.Left
            && !course.IsOnBassBeat(note.Sounding.Start)
            && notes.Count > 1
            && (notes.Count > 2 || notes[^1].Pitch.Midi - notes[0].Pitch.Midi < 12);
    }

    private static int Audible(int velocity) => Math.Clamp(velocity, 1, 127);

    /// <summary>A small unevenness that belongs to the note: from its id (FNV-1a), so that it never changes.</summary>
    private static int SpreadOf(Sounding sounding)
    {
        unchecked
        {
            var hash = 2166136261u;
            foreach (var c in sounding.Id)
            {
                hash = (hash ^ c) * 16777619u;
            }
            hash ^= hash >> 15;
            return (int)(hash % (2 * Spread + 1)) - Spread;
        }
    }
}
