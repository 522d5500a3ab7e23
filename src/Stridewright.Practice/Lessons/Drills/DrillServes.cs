using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>Which drill answers which remark on a take (common practice).</summary>
public static class DrillServes
{
    /// <summary>Kinds of remarks that a kind of drill answers.</summary>
    public static IReadOnlyList<RemarkKind> Of(DrillKind kind) =>
        kind switch
        {
            DrillKind.Leap => [RemarkKind.Leap, RemarkKind.Hesitation, RemarkKind.Unevenness],
            DrillKind.Rhythm => [RemarkKind.Flattened, RemarkKind.TooEarly, RemarkKind.Swing],
            DrillKind.ChordChange =>
            [
                RemarkKind.WrongNotes,
                RemarkKind.MissingNotes,
                RemarkKind.ExtraNotes,
                RemarkKind.Spread,
                RemarkKind.Hesitation,
                RemarkKind.Pedal,
            ],
            DrillKind.Frame =>
            [
                RemarkKind.Spread,
                RemarkKind.WrongNotes,
                RemarkKind.MissingNotes,
                RemarkKind.ExtraNotes,
            ],
            DrillKind.Beat => [RemarkKind.Unevenness, RemarkKind.Drift, RemarkKind.Balance, RemarkKind.Pedal],
            _ => [RemarkKind.Hesitation, RemarkKind.MissingNotes, RemarkKind.WrongNotes, RemarkKind.ExtraNotes],
        };

    /// <summary>Kinds of drills that answer a remark, the fittest first.</summary>
    public static IReadOnlyList<DrillKind> For(RemarkKind kind) =>
        kind switch
        {
            RemarkKind.Leap => [DrillKind.Leap],
            RemarkKind.Unevenness or RemarkKind.Drift or RemarkKind.Balance => [DrillKind.Beat],
            RemarkKind.Flattened or RemarkKind.TooEarly or RemarkKind.Swing => [DrillKind.Rhythm],
            RemarkKind.Spread => [DrillKind.Frame, DrillKind.ChordChange],
            RemarkKind.Hesitation => [DrillKind.Join],
            RemarkKind.Pedal => [DrillKind.ChordChange, DrillKind.Beat],
            _ => [DrillKind.ChordChange, DrillKind.Frame, DrillKind.Join],
        };
}
