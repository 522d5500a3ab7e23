namespace Stridewright.Arranging;

/// <summary>
/// How the strains of the usual form are played: a plan of density and dynamics over the piece. The first time plainly,
/// then fuller and with breaks, then in stop-time, the trio softly, the last strain an octave higher, full and loud
/// (common practice; the last from the conventions of register shift). Textures come with their levels.
/// </summary>
/// <param name="Level">The level whose form it is.</param>
/// <param name="Raggedness">Of the brief.</param>
/// <param name="Feel">Waltzes are pedalled.</param>
/// <param name="Strains">The tune in its place.</param>
internal sealed record Dressing(int Level, double Raggedness, Feel Feel, Strains Strains)
{
    private const int WithTexture = 4,
        WithOctaves = 5,
        WithPedal = 3;
    private const int ShortestWithIntro = 8;

    /// <summary>The line of a sequence of bare strains.</summary>
    public FormLine Line(IReadOnlyList<FormPart> order, bool intro, bool tag)
    {
        var heard = new Dictionary<char, int>();
        var parts = new List<FormPart>();
        if (intro && Strains.LastWhole().Count >= ShortestWithIntro)
        {
            parts.Add(Plain(PartKind.Intro, Level < WithTexture ? "mf" : "f"));
        }
        for (var i = 0; i < order.Count; i++)
        {
            var time = heard.GetValueOrDefault(order[i].Letter);
            heard[order[i].Letter] = time + 1;
            var isLast = i == order.Count - 1 && i > 0;
            var returns = i + 1 < order.Count && order[i + 1].Letter == order[i].Letter;
            var isRefrain = i > 0 && order.Count(p => p.Letter == order[i].Letter) > 1;
            parts.Add(Dressed(order[i], time, isLast, returns, isRefrain));
        }
        if (tag)
        {
            parts.Add(Plain(PartKind.Tag, null));
        }
        parts.Add(Plain(PartKind.End, null));
        return new FormLine([.. parts.Select((p, i) => p with { Place = i + 1 })]);
    }

    private static FormPart Plain(PartKind kind, string? dynamic) =>
        new(kind, 1) { Treatment = Treatment.Usual with { Dynamic = dynamic } };

    private FormPart Dressed(FormPart part, int time, bool isLast, bool returns, bool isRefrain)
    {
        var dressed =
            isLast ? Last(part, time)
            : part.Kind == PartKind.Trio ? Trio(part, time)
            : (time % 4) switch
            {
                0 when isRefrain => As(part, "f", Ragged(1), 0),
                0 => As(part, Level < WithTexture ? "mp" : "mf", Ragged(0), -1),
                1 or 3 when Level < WithTexture => StopTime(part),
                2 when Level < WithTexture => As(part, "mf", Ragged(2), 0),
                1 => Second(part),
                2 => StopTime(part),
                _ => As(part, "p", Ragged(1), -1, RightManner.Sixths),
            };
        return dressed with
        {
            Turnaround = returns && Turnarounds.Applied(Strains.Once(part)) is not null,
            Treatment = dressed.Treatment with { Pedal = Feel == Feel.Waltz && Level >= WithPedal },
        };
    }

    private FormPart Second(FormPart part) => As(part, "f", Ragged(2), 1) with { Breaks = Level >= WithTexture };

    private FormPart StopTime(FormPart part)
    {
        var stopped = As(part, "mp", Ragged(Level < WithTexture ? 1 : 2), 0);
        return stopped with { Treatment = stopped.Treatment with { Left = LeftManner.StopTime } };
    }

    private FormPart Trio(FormPart part, int time) =>
        time % 2 == 0 ? As(part, "p", Ragged(0), -1, RightManner.Sixths) : Second(part);

    private FormPart Last(FormPart part, int time)
    {
        var last = As(
            part,
            Level < WithTexture ? "f" : "ff",
            Ragged(2),
            1,
            Level > WithOctaves ? RightManner.Octaves : RightManner.Ragged
        );
        var canLift = CanLift(part);
        return last with
        {
            Treatment = last.Treatment with
            {
                Lift = canLift ? 1 : 0,
                // What the first levels cannot vary in the right hand they vary in the left.
                Left = !canLift && Level < WithTexture && time % 2 == 1 ? LeftManner.StopTime : LeftManner.Stride,
            },
        };
    }

    // Against the brief's: plain at first and ragged then where the level has little else to vary.
    private double Ragged(int step) =>
        Level switch
        {
            <= 3 => (ReadOnlySpan<double>)[0, 1, 2] is var s ? s[step] : 1,
            _ => (ReadOnlySpan<double>)[0.8, 1, 1.3] is var s ? s[step] : 1,
        };

    // A trio lies a fourth higher already.
    private bool CanLift(FormPart part) => Forming.CanLift(Strains.Once(part), 1) && part.Kind != PartKind.Trio;

    private FormPart As(
        FormPart part,
        string dynamic,
        double ragged,
        int fullness,
        RightManner right = RightManner.Ragged
    ) =>
        part with
        {
            RightWithLevel = right != RightManner.Ragged,
            Treatment = part.Treatment with
            {
                Dynamic = dynamic,
                Raggedness = ragged == 1 ? null : Math.Clamp(Math.Round(Raggedness * ragged, 2), 0, 1),
                Fullness = Level < WithTexture ? 0 : fullness,
                Right = right,
            },
        };
}
