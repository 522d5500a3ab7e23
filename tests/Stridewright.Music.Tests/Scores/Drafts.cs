using CsCheck;
using Stridewright.Music;

namespace Stridewright.Testing;

/// <summary>Drafts for tests: from short text, and at random.</summary>
internal static class Drafts
{
    public static Metre MetreOf(string text)
    {
        var parts = text.Split('/');
        return new Metre(int.Parse(parts[0], null), int.Parse(parts[1], null));
    }

    /// <summary>One bar; strokes are written place+length in sixteenths, such as <c>0+2 2+4.5</c>.</summary>
    public static DraftBar Bar(string metre, string strokes, Hand hand = Hand.Right, int voice = 1) =>
        new()
        {
            Number = "1",
            Metre = MetreOf(metre),
            Key = default,
            Length = MetreOf(metre).BarLength,
            Strokes = strokes
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(s => s.Split('+'))
                .Select(s => new Stroke(
                    hand,
                    voice,
                    Sixteenths(s[0]),
                    Sixteenths(s[1]),
                    [new Pitch(Step.C, 0, 5)],
                    "tune"
                ))
                .ToValueList(),
        };

    public static Draft Of(params DraftBar[] bars) => new() { Title = "Test", Bars = [.. bars] };

    /// <summary>Events as text: value, dots, <c>r</c> before rests, <c>~</c> after a note tied on.</summary>
    public static string Spelled(ScoreVoice voice) =>
        string.Join(
            ' ',
            voice.Events.Select(e =>
                (
                    e.Hidden ? "h"
                    : e.Notes.Count == 0 ? "r"
                    : ""
                )
                + (e.WholeBarRest ? "bar" : e.Value.Part.ToString(System.Globalization.CultureInfo.InvariantCulture))
                + new string('.', e.Value.Dots)
                + (e.Notes.Any(n => n.TieStart) ? "~" : "")
            )
        );

    public static string Spelled(Score score, Hand hand = Hand.Right, int voice = 1) =>
        string.Join(" | ", score.Bars.Select(b => Spelled(b.Voices.Single(v => v.Hand == hand && v.Number == voice))));

    /// <summary>Beam states as text: eighth beam / sixteenth beam, <c>-</c> for none.</summary>
    public static string Beams(ScoreVoice voice) =>
        string.Join(' ', voice.Events.Select(e => e.Beams.Count == 0 ? "-" : string.Concat(e.Beams.Select(Sign))));

    private static char Sign(BeamState state) =>
        state switch
        {
            BeamState.Begin => 'b',
            BeamState.Continue => 'c',
            BeamState.End => 'e',
            BeamState.ForwardHook => '>',
            _ => '<',
        };

    private static ScoreTime Sixteenths(string text) =>
        new((long)(2 * decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture)), 32);

    private static Gen<(int Gap, int Length, int Key)[]> Line { get; } =
        Gen.Select(
            Gen.OneOf(Gen.Const(0), Gen.Int[0, 8]),
            Gen.OneOf(Gen.Int[1, 12], Gen.Int[1, 80]),
            Gen.Int[0, 12]
        ).Array[0, 30];

    private static readonly string[] Metres = "2/4 4/4 2/2 3/4 6/8 9/8 12/8 3/2 6/4 5/4 3/8 7/8 5/8 1/4 4/2".Split(' ');

    /// <summary>Random drafts of up to eight bars in many metres, with pick-up, two voices a hand and 32nds.</summary>
    public static Gen<Draft> Random { get; } =
        from metre in Gen.Int[0, Metres.Length - 1].Select(i => MetreOf(Metres[i]))
        from pickUp in Gen.Int[0, 3]
        from count in Gen.Int[1, 8]
        from lines in Line.Array[4]
        select Make(metre, pickUp, count, lines);

    private static Draft Make(Metre metre, int pickUp, int count, (int Gap, int Length, int Key)[][] lines)
    {
        var bars = new List<DraftBar>();
        var up = new ScoreTime(pickUp, 16);
        if (pickUp > 0 && up < metre.BarLength)
        {
            bars.Add(
                new DraftBar
                {
                    Number = "0",
                    Implicit = true,
                    Metre = metre,
                    Key = default,
                    Length = up,
                }
            );
        }
        for (var i = 1; i <= count; i++)
        {
            bars.Add(
                new DraftBar
                {
                    Number = i.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Metre = metre,
                    Key = default,
                    Length = metre.BarLength,
                }
            );
        }
        var strokes = bars.Select(_ => new List<Stroke>()).ToArray();
        for (var line = 0; line < lines.Length; line++)
        {
            var (hand, voice) = ((Hand)(line / 2), 1 + line % 2);
            var now = ScoreTime.Zero;
            foreach (var (gap, length, key) in lines[line])
            {
                now += new ScoreTime(gap, 32);
                var (bar, start) = (0, ScoreTime.Zero);
                while (bar < bars.Count && now >= start + bars[bar].Length)
                {
                    start += bars[bar++].Length;
                }
                var end = bars.Aggregate(ScoreTime.Zero, (sum, b) => sum + b.Length);
                if (bar == bars.Count || now + new ScoreTime(length, 32) > end)
                {
                    break;
                }
                // Each line has its own keys, so that no key is struck while it sounds.
                var low = new Pitch((Step)(key % 7), 0, 6 - line);
                ValueList<Pitch> pitches = key > 9 ? [low, low with { Tone = low.Tone.PlusFifths(7) }] : [low];
                strokes[bar].Add(new Stroke(hand, voice, now - start, new ScoreTime(length, 32), pitches, "tune"));
                now += new ScoreTime(length, 32);
            }
        }
        return Of([.. bars.Select((b, i) => b with { Strokes = [.. strokes[i]] })]);
    }
}
