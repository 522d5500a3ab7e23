using System.Text;
using System.Text.RegularExpressions;
using Microsoft.ClearScript;
using NAudio.Midi;
using Stridewright.Engraving;
using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Proof.Tests.Abc;

public sealed partial class AbcImportTests
{
    [Fact]
    public void Explore()
    {
        var o = new List<string>();
        var engine = Engine.Start(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        foreach (var path in Corpus.Files("corpus/abc", ".abc"))
        {
            var text = Endings().Replace(File.ReadAllText(path), m => "|");
            var name = Path.GetFileNameWithoutExtension(path);
            try
            {
                if (!engine.Load("{\"inputFrom\":\"abc\"}"u8, Encoding.UTF8.GetBytes(text)))
                {
                    o.Add(name + ": not loaded");
                    continue;
                }
                var bytes = engine.Midi();
                var midi = new MidiFile(new MemoryStream(bytes), false);
                double q = midi.DeltaTicksPerQuarterNote;
                var theirs = midi.Events.SelectMany(e => e).OfType<NoteOnEvent>().Where(n => n.Velocity > 0).GroupBy(n => n.AbsoluteTime).OrderBy(g => g.Key).Select(g => (At: g.Key / q, Key: g.Max(n => n.NoteNumber))).ToList();
                var tune = AbcReader.Read(new StringReader(File.ReadAllText(path))).Value![0];
                var ours = new List<(double At, int Key, int Bar)>();
                var now = ScoreTime.Zero;
                var tied = false;
                foreach (var (bar, i) in tune.Bars.Select((b, i) => (b, i)))
                {
                    foreach (var note in bar.Notes)
                    {
                        if (!tied)
                        {
                            ours.Add(((now + note.At).ToQuarters(), note.Pitch.Midi, i));
                        }
                        tied = note.TiedToNext;
                    }
                    now += bar.Length;
                }
                var n = 0;
                while (n < Math.Min(ours.Count, theirs.Count) && Math.Abs(ours[n].At - theirs[n].At) < 0.02 && ours[n].Key == theirs[n].Key) n++;
                o.Add(n == ours.Count && n == theirs.Count ? $"{name}: SAME {n}" : $"{name}: {ours.Count} ours {theirs.Count} theirs, first difference {n}: ours {string.Join(" ", ours.Skip(n).Take(4))} theirs {string.Join(" ", theirs.Skip(n).Take(4))}");
            }
            catch (Exception e) when (e is ScriptEngineException or FormatException)
            {
                o.Add(name + ": CRASH " + e.Message);
                engine.Dispose();
                engine = Engine.Start(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
            }
        }
        engine.Dispose();
        File.WriteAllLines("/tmp/explore.txt", o);
    }

    [GeneratedRegex(@"\[[12]|:*\|+:*[12]?|::")]
    private static partial Regex Endings();
}
