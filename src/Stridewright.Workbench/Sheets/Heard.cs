using Stridewright.Music;
using Stridewright.Sound;

namespace Stridewright.Workbench.Sheets;

/// <summary>A key that is heard. Times are seconds from the start.</summary>
/// <param name="Id">Of its note in the score and on its pages; a repeat strikes it again. Null: it has none.</param>
/// <param name="Length">Until the key is let go.</param>
/// <param name="Rings">Until the damper falls, with the key or with the pedal.</param>
/// <param name="Key">MIDI note number.</param>
/// <param name="Velocity">1 to 127.</param>
/// <param name="Hand"><c>right</c> or <c>left</c>.</param>
/// <param name="Kind"><c>tune</c> (its top notes), <c>inner</c> (what is struck under them), <c>fill</c>, <c>crushed</c>,
/// <c>bass</c>, <c>chord</c>, <c>run</c>; empty where nothing is known of it.</param>
public sealed record HeardNote(
    string? Id,
    double At,
    double Length,
    double Rings,
    int Key,
    int Velocity,
    string Hand,
    string Kind
);

/// <summary>The pedal goes down or up.</summary>
public sealed record HeardPedal(double At, bool Down);

/// <summary>A bar as it is played; a repeated one comes again.</summary>
/// <param name="Id">Of the bar in the score and on its pages.</param>
/// <param name="Number">As printed.</param>
/// <param name="Beats">Where its beats fall, in seconds from the start; a pick-up has the last ones of its bar.</param>
/// <param name="Count">Beats of a full bar, for counting in.</param>
public sealed record HeardBar(string Id, string Number, double At, double Length, ValueList<double> Beats, int Count);

/// <summary>A setting as it is heard: what its MIDI file says, in seconds.</summary>
/// <param name="Seconds">Its length.</param>
/// <param name="Notes">By the time of their stroke.</param>
public sealed record Heard(
    double Seconds,
    ValueList<HeardNote> Notes,
    ValueList<HeardPedal> Pedal,
    ValueList<HeardBar> Bars
)
{
    internal static Heard Of(Score score, Performance performance)
    {
        var tops = new HashSet<string>(
            score
                .Bars.SelectMany(b => b.Voices)
                .Where(v => v.Hand == Hand.Right && v.Number == 1)
                .SelectMany(v => v.Events)
                .Where(e => e.Notes.Count > 0)
                .Select(e => e.Notes[^1].Id)
        );
        return new(
            performance.SecondsAt(performance.EndTick),
            Ringing
                .Of(performance)
                .Select(s => new HeardNote(
                    s.Stroke.Id,
                    s.Start,
                    s.Lifted - s.Start,
                    s.Damped - s.Start,
                    s.Stroke.Key,
                    s.Stroke.Velocity,
                    s.Stroke.Hand == Hand.Right ? "right" : "left",
                    KindOf(s.Stroke.Id, tops)
                ))
                .ToValueList(),
            performance.Pedal.Select(p => new HeardPedal(performance.SecondsAt(p.Tick), p.Down)).ToValueList(),
            BarsOf(score, performance).ToValueList()
        );
    }

    // A note's id tells its role: bar, hand and voice, place, role, and that it is crushed.
    private static string KindOf(string? id, HashSet<string> tops) =>
        (id ?? "").Split('-') is not [_, _, _, var role, .. var rest] ? ""
        : rest.Length > 1 ? "crushed"
        : role == "tune" && !tops.Contains(id!) ? "inner"
        : role;

    private static IEnumerable<HeardBar> BarsOf(Score score, Performance performance)
    {
        var start = ScoreTime.Zero;
        foreach (var index in Timeline.PlayOrder(score))
        {
            var bar = score.Bars[index];
            var (beat, full) = (bar.Metre.Beat, bar.Metre.BarLength);
            var missing = bar.Implicit ? ScoreTime.Max(ScoreTime.Zero, full - bar.Length) : ScoreTime.Zero;
            var beats = new List<double>();
            for (var at = ScoreTime.Zero; at < missing + bar.Length; at += beat)
            {
                if (at >= missing)
                {
                    beats.Add(SecondsAt(start + at - missing));
                }
            }
            var (begin, end) = (SecondsAt(start), SecondsAt(start + bar.Length));
            var count = (int)Math.Max(1, full.Round(beat));
            yield return new(bar.Id, bar.Number, begin, end - begin, beats.ToValueList(), count);
            start += bar.Length;
        }

        double SecondsAt(ScoreTime time) =>
            performance.SecondsAt(time.Round(new ScoreTime(1, 4 * performance.TicksPerQuarter)));
    }
}
