using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>One hand's grasps with the fingers found for them.</summary>
internal sealed record HandFingering(List<Grasp> Grasps, byte[][] Fingers, List<FingeredOnset> Onsets)
{
    private const double HundredthsOfPoint = 100;

    public static HandFingering Of(
        Passage passage,
        PlayerHands hands,
        Hand side,
        CostTable table,
        IReadOnlyDictionary<WrittenFinger, int> written,
        List<Diagnostic> remarks,
        CancellationToken cancellation
    )
    {
        var hand = FingerHand.Of(hands, side);
        var line = new LineCosts(table, hand);
        var grasps = new GraspMaker(passage, hand, line, written, remarks).Of(
            Onset.Of(passage, side, new Reach(hands, side))
        );
        var extended = RunContext.Extended(LongRun.Marked(grasps, line), line);
        var search = new FingerSearch(line);
        var (fingers, _) = search.Solve(extended, cancellation);
        var onsets = new List<FingeredOnset>();
        var own = new List<byte[]>();
        for (var i = 0; i < extended.Count; i++)
        {
            if (extended[i].IsImagined)
            {
                continue;
            }
            var byTerm = new int[CostTerms.Count];
            var sum = new CostSum(byTerm);
            search.Explain(extended, fingers, i, ref sum);
            own.Add(fingers[i]);
            onsets.Add(OnsetOf(grasps[onsets.Count], fingers[i], byTerm));
        }
        return new(grasps, [.. own], onsets);
    }

    private static FingeredOnset OnsetOf(Grasp grasp, byte[] fingers, int[] byTerm)
    {
        var keys = grasp
            .Keys.Select((key, i) => new FingeredKey(key, fingers[i] == 0 ? null : fingers[i], !grasp.IsStruck[i]))
            .OrderBy(k => k.Key)
            .ToValueList();
        var terms = byTerm
            .Select((cost, term) => new TermCost((CostTerm)term, cost / HundredthsOfPoint))
            .Where(t => t.Points != 0)
            .ToValueList();
        var onset = grasp.Onset;
        return new(onset.Hand, onset.Bar, onset.At, keys, terms)
        {
            IsFree = grasp.IsFree,
            IsBeyondReach = grasp.Kind == GraspKind.Beyond || Array.IndexOf(fingers, (byte)0) >= 0,
        };
    }
}
