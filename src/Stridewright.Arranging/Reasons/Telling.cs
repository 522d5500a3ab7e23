namespace Stridewright.Arranging;

/// <summary>How much a reason tells a reader who knows the style, and which reasons say the same thing again.</summary>
internal static class Telling
{
    /// <summary>0 where it goes without saying; else the more, the rarer.</summary>
    public static int Weight(Reason reason) =>
        reason switch
        {
            HarmonyReason => 100,
            KeptReason => 95,
            LimitReason => 90,
            LeftMannerReason or RightMannerReason => 80,
            BreakReason => 70,
            CrushedReason => 65,
            RunReason => 60,
            BassReason r => r.Strokes.Max(s => Weight(s.Role)),
            VoicingReason r => Weight(r.Ground),
            ThinChordReason => 35,
            ShiftReason { Syllable: not null } => 75,
            ShiftReason { Early: false } => 74,
            ShiftReason { Over: PlainPlace.BarLine } => 72,
            ShiftReason { Over: PlainPlace.MidBar } => 68,
            ShiftReason => 50,
            FillReason { Under: not null } => 55,
            MotifReason => 45,
            TextureReason { Ground: TextureGround.Accents or TextureGround.Usual } => 42,
            FigureReason => 40,
            FillReason => 20,
            _ => 0,
        };

    /// <summary>The same for reasons of which one is enough in a piece.</summary>
    public static string Topic(Reason reason) =>
        reason switch
        {
            HarmonyReason or KeptReason or PartReason => reason.Sentence,
            LimitReason r => $"{r.Kind} {r.Bound}",
            LeftMannerReason r => $"{r.Manner} {r.FellBack}",
            RightMannerReason r => $"{r.Manner} {r.FellBack}",
            BassReason r => $"bass {r.Strokes.MaxBy(s => Weight(s.Role))!.Role}",
            VoicingReason r => $"voicing {r.Ground}",
            ShiftReason r => $"shift {r.Early} {r.Over}",
            FigureReason r => $"figure {r.Untied > 0} {r.MidBar} {r.BarLine}",
            FillReason r => $"fill {r.Under is null}",
            TextureReason r => $"texture {r.Texture}",
            _ => reason.GetType().Name,
        };

    private static int Weight(BassRole role) =>
        role switch
        {
            BassRole.FifthUnderTonic => 85,
            BassRole.Pedal => 82,
            BassRole.StepTo or BassRole.StepFrom => 64,
            BassRole.SlashBass => 62,
            BassRole.Third => 48,
            BassRole.Fifth => 30,
            _ => 0,
        };

    private static int Weight(VoicingGround ground) =>
        ground switch
        {
            VoicingGround.Stays or VoicingGround.Opens => 0,
            VoicingGround.Nearest => 38,
            _ => 58,
        };
}
