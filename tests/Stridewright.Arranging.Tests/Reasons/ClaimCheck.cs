using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>All that is derived anew for one setting.</summary>
internal sealed class ClaimCheck
{
    private readonly LeftClaims _left;
    private readonly RightClaims _right;
    private readonly PieceClaims _piece;

    /// <param name="levels">The same tune for the same hands at every level.</param>
    public ClaimCheck(Tune tune, Arrangement arrangement, ScoreFacts facts, IReadOnlyList<ScoreFacts> levels)
    {
        var brief = arrangement.Brief;
        var seconds = 60 / (arrangement.BeatsPerMinute * arrangement.BeatUnit.Length.ToQuarters()) * 4;
        var unit = arrangement.Feel == Feel.Classic ? new ScoreTime(1, 16) : new ScoreTime(1, 8);
        _left = new LeftClaims(facts, levels, brief.LeftLevel, IsMeant(tune, arrangement, facts), seconds);
        _right = new RightClaims(facts, new PlainTune(tune, facts, unit), unit);
        var plain =
            brief.Harmony.Richness == Richness.Plain
                ? null
                : Arranger.Arrange(tune, brief with { Harmony = new HarmonyWish() }).Arrangement!;
        _piece = new PieceClaims(
            facts,
            brief,
            plain is null ? null : new ScoreFacts(plain.Score, brief.Hands),
            seconds,
            new Unrelaxed(tune, arrangement)
        );
    }

    // The chords' places are planned from tune, harmony and hands before any level is looked at: of a plan made anew for
    // the level above, or below the highest.
    private static Func<Struck, bool> IsMeant(Tune tune, Arrangement arrangement, ScoreFacts facts)
    {
        var other = arrangement.Brief.LeftLevel % Brief.HighestLevel + 1;
        var brief = arrangement.Brief with { LeftLevel = other, RightLevel = other };
        var plan = new Lazy<(Lattice Lattice, HomePositions Homes)>(() =>
        {
            var lattice = new Setting(tune, brief, arrangement.Feel, Feels.MainMetre(tune), Prices.Standard)
                .Plan()
                .Lattice;
            return (lattice, HomePositions.Find(lattice, facts.Reach, default));
        });
        return stroke =>
        {
            var (lattice, homes) = plan.Value;
            var pitches = stroke.Keys.Select(k => Pitch.At(k, facts.SpellingOf(stroke, k))).ToValueList();
            var tick = (int)stroke.Start.Per(lattice.Tick).Numerator;
            return homes.Price(tick, new LeftShape(LeftKind.Chord, pitches, default, 0, false)) == 0;
        };
    }

    /// <summary>What is wrong with a claim; null: it is true.</summary>
    public string? Fault(Reason reason) => _left.Fault(reason) ?? _right.Fault(reason) ?? _piece.Fault(reason);
}
