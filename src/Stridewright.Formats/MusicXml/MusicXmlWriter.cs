using System.Text;
using System.Xml;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Writes MusicXML 4.0: a score as one part named Piano on two staves, right-hand voices 1 and 2, left-hand voices 5 and
/// 6, a left hand alone on one staff in the bass clef; a tune as a lead sheet, one part named Tune on one staff. The same
/// score gives the same bytes: no date, no counter.
/// </summary>
public static class MusicXmlWriter
{
    /// <summary>Writes UTF-8 without a byte order mark; the stream stays open.</summary>
    /// <exception cref="ArgumentException">A pitch lies outside the octaves 0 to 9 of MusicXML.</exception>
    public static void Write(Score score, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(stream);
        Write(score, isLeadSheet: false, stream);
    }

    /// <summary>Writes a lead sheet as UTF-8 without a byte order mark; the stream stays open. An order of sections
    /// that differs from the written one has no place in it.</summary>
    /// <exception cref="ArgumentException">A pitch lies outside the octaves 0 to 9 of MusicXML.</exception>
    public static void Write(Tune tune, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(tune);
        ArgumentNullException.ThrowIfNull(stream);
        Write(LeadSheet.Of(tune), isLeadSheet: true, stream);
    }

    private static void Write(Score score, bool isLeadSheet, Stream stream)
    {
        var settings = new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            Indent = true,
            NewLineChars = "\n",
        };
        using var writer = XmlWriter.Create(stream, settings);
        var xml = new XmlOut(writer);
        using (xml.Open("score-partwise", ("version", "4.0")))
        {
            WriteHeader(score, isLeadSheet ? "Tune" : "Piano", xml);
            if (HasAbove(score))
            {
                WriteAbove(score, xml);
            }
            using (xml.Open("part", ("id", "P1")))
            {
                var bars = new BarWriter(xml, score, isLeadSheet);
                for (var i = 0; i < score.Bars.Count; i++)
                {
                    bars.Write(i);
                }
            }
        }
    }

    private static bool HasAbove(Score score) => score.Bars.Any(b => b.Above.Count > 0);

    // The small staff is a part of its own, of cue notes: sounding is none of its business.
    private static void WriteAbove(Score score, XmlOut xml)
    {
        ScoreBar Shown(ScoreBar bar) =>
            bar with
            {
                Id = "",
                Chords = [],
                Directions = [],
                Voices = [new ScoreVoice(Hand.Right, 1, bar.Above)],
            };
        var shown = score with { LeftHandOnly = false, Bars = score.Bars.Select(Shown).ToValueList() };
        using (xml.Open("part", ("id", "P2")))
        {
            var bars = new BarWriter(xml, shown, isLeadSheet: true, isCue: true);
            for (var i = 0; i < shown.Bars.Count; i++)
            {
                bars.Write(i);
            }
        }
    }

    private static void WriteHeader(Score score, string part, XmlOut xml)
    {
        using (xml.Open("work"))
        {
            xml.Text("work-title", score.Title);
        }
        xml.Text("movement-title", score.Title);
        using (xml.Open("identification"))
        {
            if (score.Composer is { } composer)
            {
                xml.Text("creator", composer, ("type", "composer"));
            }
            using (xml.Open("encoding"))
            {
                xml.Text("software", "Stridewright");
            }
            WriteFootnotes(score, xml);
        }
        WriteCredit(xml, "title", score.Title, "center");
        WriteCredit(xml, "subtitle", score.Subtitle, "center");
        WriteCredit(xml, "composer", score.Composer, "right");
        using (xml.Open("part-list"))
        {
            if (HasAbove(score))
            {
                using (xml.Open("score-part", ("id", "P2")))
                {
                    xml.Text("part-name", "Tune", ("print-object", "no"));
                }
            }
            WritePart(part, xml);
        }
    }

    private static void WriteFootnotes(Score score, XmlOut xml)
    {
        if (score.Footnotes.Count == 0)
        {
            return;
        }
        using (xml.Open("miscellaneous"))
        {
            for (var i = 0; i < score.Footnotes.Count; i++)
            {
                xml.Text("miscellaneous-field", score.Footnotes[i], ("name", FootnoteName(i + 1)));
            }
        }
    }

    private static string FootnoteName(int number) => FormattableString.Invariant($"footnote-{number}");

    private static void WritePart(string part, XmlOut xml)
    {
        using (xml.Open("score-part", ("id", "P1")))
        {
            xml.Text("part-name", part);
            using (xml.Open("score-instrument", ("id", "P1-I1")))
            {
                xml.Text("instrument-name", "Piano");
            }
            using (xml.Open("midi-instrument", ("id", "P1-I1")))
            {
                xml.Text("midi-channel", "1");
                xml.Text("midi-program", "1");
            }
        }
    }

    private static void WriteCredit(XmlOut xml, string type, string? words, string justify)
    {
        if (!string.IsNullOrEmpty(words))
        {
            using (xml.Open("credit", ("page", "1")))
            {
                xml.Text("credit-type", type);
                xml.Text("credit-words", words, ("justify", justify), ("valign", "top"));
            }
        }
    }
}
