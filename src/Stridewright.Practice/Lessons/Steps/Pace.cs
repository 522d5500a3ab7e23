using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Tempi of a piece and of what is made from it.</summary>
/// <param name="Beat">The beat that tempi count.</param>
/// <param name="BeatsPerMinute">The piece's tempo where it begins.</param>
internal sealed record Pace(NoteValue Beat, double BeatsPerMinute)
{
    public static Pace Of(Score score)
    {
        var metre = (score.Bars.FirstOrDefault(b => !b.Implicit) ?? score.Bars[0]).Metre;
        var printed = score.Bars.SelectMany(b => b.Directions).FirstOrDefault(d => d.QuartersPerMinute is not null);
        var beat = metre.IsCompound ? new NoteValue(metre.Unit / 2, 1) : new NoteValue(metre.Unit);
        var quarters = printed?.QuartersPerMinute ?? UsualTempo.QuartersPerMinute(metre);
        return new(beat, quarters / beat.Length.ToQuarters());
    }

    /// <summary>Quarters a minute of a tempo in beats.</summary>
    public double Quarters(double beats) => beats * Beat.Length.ToQuarters();

    /// <summary>Every printed tempo times the same; the first bar gets one where there is none.</summary>
    public Score Slowed(Score score, double beats)
    {
        var speed = beats / BeatsPerMinute;
        var bars = score
            .Bars.Select(b =>
                b with
                {
                    Directions = b
                        .Directions.Select(d =>
                            d.BeatsPerMinute is { } bpm ? d with { BeatsPerMinute = Math.Round(bpm * speed, 1) } : d
                        )
                        .ToValueList(),
                }
            )
            .ToArray();
        if (!bars[0].Directions.Any(d => d.At.IsZero && d.BeatsPerMinute is not null))
        {
            var tempo = new Direction(ScoreTime.Zero) { BeatsPerMinute = Math.Round(beats, 1), BeatUnit = Beat };
            bars[0] = bars[0] with { Directions = [tempo, .. bars[0].Directions] };
        }
        return score with { Bars = bars.ToValueList() };
    }

    /// <summary>Tempo of a step's test: the nearer the step is to the piece, the nearer to the piece's.</summary>
    public double TestOf(StepKind kind)
    {
        var moveOn = LessonLimits.MoveOn.Value;
        var share = kind switch
        {
            StepKind.TogetherWhole => 1,
            StepKind.TogetherHalf => (1 + moveOn) / 2,
            _ => moveOn,
        };
        return Math.Round(BeatsPerMinute * share);
    }

    /// <summary>From a share of the piece's tempo, or what is comfortable where that is less, to the piece's.</summary>
    /// <param name="isFirst">Nothing like it was learned before.</param>
    public TempoRange Range(Score score, PlayerHands hands, bool isFirst)
    {
        var begin = BeatsPerMinute * (isFirst ? LessonLimits.Begin : LessonLimits.GoOn).Value;
        var comfortable = Assess.Comfortable(score, hands) is { } found ? found.Speed * BeatsPerMinute : begin;
        return new(Math.Round(Math.Min(begin, comfortable)), Math.Round(BeatsPerMinute));
    }
}
