using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>The tests of truth can fail: every kind of claim, made false, is found out.</summary>
public sealed class FalseClaimTests
{
    [Fact]
    public void A_claim_made_false_is_found_out()
    {
        var kinds = new HashSet<Type>();
        foreach (var tune in Tunes.Samples)
        {
            var brief = new Brief
            {
                LeftLevel = 6,
                RightLevel = 6,
                Hands = new PlayerHands { SpanMm = 185 },
            };
            var arrangement = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken).Arrangement!;
            var facts = new ScoreFacts(arrangement.Score, brief.Hands);
            var check = new ClaimCheck(tune, arrangement, facts, [facts]);
            foreach (var reason in Arranging.Reasons.Of(arrangement).SelectMany(b => b.Reasons))
            {
                if (MadeFalse(reason) is { } claim)
                {
                    Assert.True(check.Fault(claim) is not null, $"{tune.Title}: {claim}");
                    kinds.Add(claim.GetType());
                }
            }
        }
        Assert.Superset(
            new HashSet<Type>
            {
                typeof(BassReason),
                typeof(VoicingReason),
                typeof(RunReason),
                typeof(BreakReason),
                typeof(ShiftReason),
                typeof(FigureReason),
                typeof(FillReason),
                typeof(TextureReason),
                typeof(CrushedReason),
                typeof(LimitReason),
            },
            kinds
        );
    }

    private static Reason? MadeFalse(Reason reason) =>
        reason switch
        {
            BassReason r => r with
            {
                Strokes =
                [
                    .. r.Strokes.Select(s =>
                        s with
                        {
                            Role = Other(s.Role),
                            Neighbour = s.Pitches[0].Plus(Interval.Octave),
                        }
                    ),
                ],
            },
            VoicingReason { Before.Count: > 0 } r => r with { Movement = r.Movement + 1 },
            VoicingReason r => r with { Pitches = [.. r.Pitches.Skip(1)] },
            RunReason r => r with { Into = r.Into.Plus(Interval.Octave) },
            BreakReason r => r with { RightOnsets = r.RightOnsets + 1 },
            ShiftReason r => r with { Early = !r.Early },
            FigureReason r => r with { MidBar = !r.MidBar },
            FillReason r => r with { Count = r.Count + 1 },
            TextureReason r => r with { Count = r.Count + 1 },
            CrushedReason r => r with { Crushed = r.Crushed.Plus(Interval.MinorSecond) },
            LimitReason { Kind: LimitKind.OctaveStrained } r => r with { Kind = LimitKind.OctaveOut },
            _ => null,
        };

    // An octave is no step.
    private static BassRole Other(BassRole role) => role == BassRole.StepTo ? BassRole.Root : BassRole.StepTo;
}
