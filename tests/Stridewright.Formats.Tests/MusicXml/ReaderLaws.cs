using Stridewright.Music;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>What holds for whatever a reader returns.</summary>
internal static class ReaderLaws
{
    public static void Check(Tune tune, string name)
    {
        Assert.NotEmpty(tune.Bars);
        TuneNote? tied = null;
        foreach (var bar in tune.Bars)
        {
            var at = ScoreTime.Zero;
            foreach (var note in bar.Notes)
            {
                Assert.True(note.At >= at && note.Length > ScoreTime.Zero, $"{name}, bar {bar.Number}: {note}");
                Assert.True(tied is null || tied.Pitch == note.Pitch, $"{name}, bar {bar.Number}: tie to {note}");
                Assert.InRange(note.Pitch.Midi, 0, 127);
                at = note.At + note.Length;
                tied = note.TiedToNext ? note : null;
            }
            Assert.True(at <= bar.Length, $"{name}, bar {bar.Number}: {at} of {bar.Length}");
            Assert.True(bar.Length > ScoreTime.Zero, name);
            var chordAt = ScoreTime.Zero;
            foreach (var chord in bar.Chords)
            {
                Assert.True(chord.At >= chordAt && chord.At < bar.Length, $"{name}, bar {bar.Number}: {chord.At}");
                chordAt = chord.At;
            }
        }
        Assert.Null(tied);
    }

    public static void Check(Score score, string name)
    {
        foreach (var bar in score.Bars)
        {
            Assert.Contains(bar.Voices, v => v.Hand == Hand.Right);
            Assert.Contains(bar.Voices, v => v.Hand == Hand.Left);
            foreach (var voice in bar.Voices)
            {
                var at = ScoreTime.Zero;
                foreach (var e in voice.Events)
                {
                    Assert.True(e.At == at && e.Length > ScoreTime.Zero, $"{name}, bar {bar.Number}: {e.At}");
                    at += e.Length;
                }
                Assert.True(at == bar.Length, $"{name}, bar {bar.Number}: {at} of {bar.Length}");
            }
        }
    }
}
