using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Abc;

public sealed class AbcAnswerKeyTests
{
    [Fact]
    public void Explore()
    {
        var good = 0;
        foreach (var path in Corpus.Files("corpus/abc", ".melody.mid"))
        {
            var name = Path.GetFileName(path).Replace(".melody.mid", "");
            var reading = AbcReader.Read(new StreamReader(path.Replace(".melody.mid", ".abc")));
            var tune = Unfolding.Unfold(reading.Value![0]);
            var key = MidiKey.Read(path);
            var ours = Sounding(tune);
            var n = 0;
            while (n < ours.Count && n < key.Notes.Count && ours[n].Key == key.Notes[n].Key && Math.Abs(ours[n].Onset - key.Notes[n].Onset) < 1.01 * key.Tick) n++;
            var fine = n == ours.Count && n == key.Notes.Count;
            good += fine ? 1 : 0;
            var len = ours.Zip(key.Notes).Count(p => Math.Abs(p.First.Length - p.Second.Length) > 0.02);
            Console.WriteLine($"{name}: {(fine ? "ok" : $"DIFF at {n} of {ours.Count}/{key.Notes.Count}: {(n < ours.Count ? ours[n] : default)} against {(n < key.Notes.Count ? key.Notes[n] : default)}")} lengths off {len} bars {tune.Bars.Count} tick {key.Tick:0.0000}");
            foreach (var d in reading.Diagnostics) Console.WriteLine("      " + d);
        }
        Console.WriteLine($"good {good}");
    }

    private static List<(double Onset, double Length, int Key)> Sounding(Tune tune)
    {
        var notes = new List<(double, double, int)>();
        var first = tune.Bars[0];
        var at = first.Length < first.Metre.BarLength ? first.Metre.BarLength - first.Length : ScoreTime.Zero;
        var tied = false;
        foreach (var bar in tune.Bars)
        {
            foreach (var note in bar.Notes)
            {
                if (tied)
                {
                    notes[^1] = notes[^1] with { Item2 = notes[^1].Item2 + note.Length.ToQuarters() };
                }
                else
                {
                    notes.Add(((at + note.At).ToQuarters(), note.Length.ToQuarters(), note.Pitch.Midi));
                }
                tied = note.TiedToNext;
            }
            at += bar.Length;
        }
        return notes;
    }
}
