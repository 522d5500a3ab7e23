using System.Globalization;

namespace Stridewright.Arranging;

/// <summary>What a part of a form is made of.</summary>
public enum PartKind
{
    /// <summary>Four bars before the tune: its own last phrase, or a run to the dominant.</summary>
    Intro,

    /// <summary>Two bars of tonic and dominant, repeated till ready.</summary>
    Vamp,

    /// <summary>One of the tune's sections.</summary>
    Strain,

    /// <summary>A section in the subdominant.</summary>
    Trio,

    /// <summary>The second half of a section.</summary>
    Half,

    /// <summary>The last two bars once more.</summary>
    Tag,

    /// <summary>A closing bar on the tonic.</summary>
    End,
}

/// <summary>One part of a form.</summary>
/// <param name="Letter">Of the section, <c>A</c> to <c>Z</c>; unused where <paramref name="Kind"/> has none.</param>
/// <param name="Place">Where the part begins in its line, from 1.</param>
public sealed record FormPart(PartKind Kind, int Place, char Letter = ' ')
{
    public Treatment Treatment { get; init; } = Treatment.Usual;

    /// <summary>The left hand rests in the last two bars of every eight.</summary>
    public bool Breaks { get; init; }

    /// <summary>The strain is repeated as written, with its endings, instead of written out.</summary>
    public bool Repeated { get; init; }

    /// <summary>The introduction is a run in octaves to the dominant.</summary>
    public bool Run { get; init; }

    /// <summary>The last two bars lead back: I VI7 II7 V7.</summary>
    public bool Turnaround { get; init; }

    /// <summary>The strain leads on: no double bar after it, and the word is printed.</summary>
    public bool Segue { get; init; }

    /// <summary>The left hand's manner only from the level on that has it.</summary>
    public bool LeftWithLevel { get; init; }

    /// <summary>The right hand's manner only from the level on that has it.</summary>
    public bool RightWithLevel { get; init; }

    /// <summary>A strain of the tune, not an addition.</summary>
    public bool HasLetter => Kind is PartKind.Strain or PartKind.Trio or PartKind.Half;

    /// <summary>The treatment for hands of these levels.</summary>
    internal Treatment For(Brief brief) =>
        Treatment with
        {
            Left =
                LeftWithLevel && brief.LeftLevel < Manners.LevelOf(Treatment.Left) ? LeftManner.Stride : Treatment.Left,
            Right =
                RightWithLevel && brief.RightLevel < Manners.LevelOf(Treatment.Right)
                    ? RightManner.Ragged
                    : Treatment.Right,
        };

    /// <summary>What it is, without how it is played: such as <c>trio:C</c>.</summary>
    public string Name =>
        Kind switch
        {
            PartKind.Strain => "",
            PartKind.Trio => "trio:",
            PartKind.Half => "half:",
            PartKind.Intro => "intro",
            PartKind.Vamp => "vamp",
            PartKind.Tag => "tag",
            _ => "end",
        }
        + (HasLetter ? Letter : "")
        + (Repeated ? "*" : "");

    /// <summary>As it stands in a line.</summary>
    public override string ToString()
    {
        var words = Words().ToList();
        return words.Count == 0 ? Name : $"{Name}({string.Join(',', words)})";
    }

    private IEnumerable<string> Words()
    {
        if (Treatment.Left != LeftManner.Stride)
        {
            yield return Manners.Left.First(m => m.Value == Treatment.Left).Key + (LeftWithLevel ? "?" : "");
        }
        if (Treatment.Right != RightManner.Ragged)
        {
            yield return Manners.Right.First(m => m.Value == Treatment.Right).Key + (RightWithLevel ? "?" : "");
        }
        if (Treatment.Raggedness is { } raggedness)
        {
            yield return FormReader.Rag + raggedness.ToString("0.##", CultureInfo.InvariantCulture);
        }
        foreach (
            var (isSo, word) in new[]
            {
                (Treatment.Fullness < 0, "thin"),
                (Treatment.Fullness > 0, "thick"),
                (Treatment.Lift > 0, "high"),
                (Breaks, "breaks"),
                (Run, "run"),
                (Turnaround, "turnaround"),
                (Segue, "segue"),
                (Treatment.Pedal, "pedal"),
            }
        )
        {
            if (isSo)
            {
                yield return word;
            }
        }
        if (Treatment.Dynamic is { } dynamic)
        {
            yield return dynamic;
        }
    }
}
