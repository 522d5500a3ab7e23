using System.Text;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Testing;

namespace Stridewright.Practice.Tests;

public sealed class ExpectedScoreTests
{
    private static string Note(
        string step,
        int octave,
        int duration,
        string more = "",
        int staff = 1,
        string voice = "1"
    ) =>
        $"<note>{(more.Contains("<grace/>", StringComparison.Ordinal) ? "<grace/>" : "")}{(more.Contains("<chord/>", StringComparison.Ordinal) ? "<chord/>" : "")}"
        + $"<pitch><step>{step}</step><octave>{octave}</octave></pitch>"
        + (more.Contains("<grace/>", StringComparison.Ordinal) ? "" : $"<duration>{duration}</duration>")
        + (more.Contains("tie", StringComparison.Ordinal) ? more : "")
        + $"<voice>{voice}</voice><staff>{staff}</staff></note>";

    private static ScoreNotes Read(params string[] bars)
    {
        var measures = bars.Select((b, i) => $"<measure number=\"{i + 1}\">{b}</measure>");
        var xml =
            "<score-partwise version=\"4.0\"><part-list><score-part id=\"P1\"><part-name>Piano</part-name></score-part></part-list>"
            + $"<part id=\"P1\">{string.Concat(measures)}</part></score-partwise>";
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(xml));
        var reading = MusicXmlReader.ReadNotes(stream);
        Assert.DoesNotContain(reading.Diagnostics, d => d.Severity == Severity.Error);
        return reading.Value!;
    }

    private const string Head =
        "<attributes><divisions>4</divisions><time><beats>2</beats><beat-type>4</beat-type></time><staves>2</staves></attributes>";

    [Fact]
    public void Ties_make_one_note_and_graces_stand_at_their_principal()
    {
        var score = ExpectedScore.Of(
            Read(
                Head
                    + Note("C", 5, 4)
                    + Note("D", 5, 4, "<tie type=\"start\"/>")
                    + "<backup><duration>8</duration></backup>"
                    + Note("C", 3, 8, staff: 2, voice: "5"),
                Note("D", 5, 4, "<tie type=\"stop\"/>") + Note("F", 5, 0, "<grace/>") + Note("E", 5, 4)
            )
        );
        Assert.Equal(
            [(0.0, 72, 1.0), (0.0, 48, 2.0), (1.0, 74, 2.0), (3.0, 77, 0.0), (3.0, 76, 1.0)],
            score.Notes.Select(n => (n.Beats, n.Key, n.Length))
        );
        Assert.Equal([0, 0, 0, 1, 0], score.Notes.Select(n => n.Grace));
        Assert.Equal(Hand.Left, score.Notes[1].Hand);
        Assert.Equal("m1-v5-1", score.Notes[1].Id);
    }

    [Fact]
    public void Bars_are_as_long_as_what_they_hold_and_repeats_are_played()
    {
        // A short bar inside the piece and a cadenza of five quarters: nothing is filled up.
        var score = ExpectedScore.Of(
            Read(
                Head + Note("C", 4, 8),
                "<barline location=\"left\"><repeat direction=\"forward\"/></barline>" + Note("D", 4, 3),
                Note("E", 4, 20) + "<barline location=\"right\"><repeat direction=\"backward\"/></barline>",
                Note("F", 4, 8)
            )
        );
        Assert.Equal([0, 2, 2.75, 7.75, 8.5, 13.5], score.Notes.Select(n => n.Beats));
        Assert.Equal([60, 62, 64, 62, 64, 65], score.Notes.Select(n => n.Key));
    }

    [Theory]
    [InlineData("dacapo", "CDEFCD")]
    [InlineData("dalsegno", "CDEFD")]
    [InlineData("none", "CDEFG")]
    public void Da_capo_and_dal_segno_are_followed_to_the_end(string way, string order)
    {
        static string Sound(string name) => $"<sound {name}=\"yes\"/>";
        var score = ExpectedScore.Of(
            Read(
                Head + Note("C", 4, 8),
                Sound("segno") + Note("D", 4, 8) + Sound("fine"),
                Note("E", 4, 8),
                Note("F", 4, 8) + (way == "none" ? "" : Sound(way)),
                way == "none" ? Note("G", 4, 8) : "<note><rest/><duration>8</duration><voice>1</voice></note>"
            )
        );
        Assert.Equal(order, string.Concat(score.Notes.Select(n => "CDEFG"[(n.Key - 60 + 1) / 2])));
        Assert.Equal(2.0 * (order.Length - 1), score.Notes[^1].Beats);
    }

    [Fact]
    public void The_coda_is_gone_to_after_going_back()
    {
        var score = ExpectedScore.Of(
            Read(
                Head + Note("C", 4, 8),
                Note("D", 4, 8) + "<sound tocoda=\"coda\"/>",
                Note("E", 4, 8) + "<sound dacapo=\"yes\"/>",
                "<sound coda=\"coda\"/>" + Note("F", 4, 8)
            )
        );
        Assert.Equal([60, 62, 64, 60, 62, 65], score.Notes.Select(n => n.Key));
    }

    [Fact]
    public void Beats_count_from_the_first_note_and_ids_of_the_score_are_kept()
    {
        var score = ExpectedScore.Of(
            Read(
                Head
                    + "<note><rest/><duration>4</duration><voice>1</voice></note>"
                    + Note("C", 4, 4).Replace("<note>", "<note id=\"n7\">", StringComparison.Ordinal)
            )
        );
        Assert.Equal(("n7", 0.0), (score.Notes[0].Id, score.Notes[0].Beats));
    }

    [Fact]
    public void Cue_notes_are_not_expected_and_one_staff_will_do()
    {
        var cue =
            "<note><cue/><pitch><step>G</step><octave>5</octave></pitch><duration>4</duration><voice>1</voice></note>";
        var score = ExpectedScore.Of(
            Read(Head.Replace("<staves>2</staves>", "", StringComparison.Ordinal) + Note("C", 4, 4) + cue)
        );
        Assert.Equal(60, Assert.Single(score.Notes).Key);
    }

    [Fact]
    public void Every_valid_score_of_the_corpus_can_be_read_and_is_found_in_itself()
    {
        foreach (var file in Corpus.Files("corpus/musicxml/valid", ".musicxml", ".mxl"))
        {
            using var stream = File.OpenRead(file);
            if (MusicXmlReader.ReadNotes(stream).Value is not { } notes)
            {
                continue; // chord symbols alone
            }
            var score = ExpectedScore.Of(notes);
            var take = Takes.Played.Take(score, n => 1 + 0.6 * n.Beats - 0.08 * n.Grace);
            var alignment = Aligner.Align(score, take);
            var found = alignment.Pairs.Count(p => p.IsMatch);
            // The same key in two voices, or struck again at once, may take each other's place; none is lost.
            Assert.True(found == score.Notes.Count, $"{Path.GetFileName(file)}: {found} of {score.Notes.Count}");
        }
    }

    [Fact]
    public void The_text_has_the_header_that_is_promised_and_a_line_for_each_pair()
    {
        var score = Takes.Played.Stride(1);
        var take = Takes.Played.Take(score, n => 1 + 0.5 * n.Beats, n => n is { Key: 36 } ? 37 : n.Key);
        var lines = AlignmentText.Write(Aligner.Align(score, take)).Split('\n');
        Assert.Equal("score_onset_beats\tscore_pitch\tnote_id\tperformed_onset_s\tperformed_pitch\tkind", lines[0]);
        Assert.Equal(score.Notes.Count + 3, lines.Length); // header, one deletion more, and the end of the last line
        Assert.Contains("0.0\t36\tm1-v2-1\t\t\tdeletion", lines);
        Assert.Contains("\t\t\t1.0\t37\tinsertion", lines);
        Assert.Contains("0.5\t75\tm1-v1-2\t1.25\t75\tmatch", lines);
        Assert.All(lines[..^1], l => Assert.Equal(6, l.Split('\t').Length));
    }
}
