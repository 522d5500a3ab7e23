namespace Stridewright.Formats.MusicXml;

/// <summary>Keeps the ties of a line whose two ends meet, and drops the rest with a finding.</summary>
internal static class TieChecker
{
    public static void Apply(List<List<LineNote>> lines, List<WrittenBar> bars, Findings findings)
    {
        LineNote? open = null; // the note before, and where it stands
        var (openBar, openIndex) = (0, 0);
        for (var bar = 0; bar < lines.Count; bar++)
        {
            for (var i = 0; i < lines[bar].Count; i++)
            {
                var current = lines[bar][i];
                var meets = open is not null && Meets(open, openBar, current, bar, bars);
                if (open is { Written.TieStart: true } && meets)
                {
                    lines[openBar][openIndex] = open with { Note = open.Note with { TiedToNext = true } };
                    // The same key under another name is still the same note.
                    lines[bar][i] = current = current with { Note = current.Note with { Pitch = open.Note.Pitch } };
                }
                else
                {
                    if (open is { Written.TieStart: true })
                    {
                        findings.Note(open.Written.Place, MusicXmlMessages.TieWithoutEnd);
                    }
                    if (current.Written.TieStop)
                    {
                        findings.Note(current.Written.Place, MusicXmlMessages.TieWithoutStart);
                    }
                }
                (open, openBar, openIndex) = (current, bar, i);
            }
        }
        if (open is { Written.TieStart: true })
        {
            findings.Note(open.Written.Place, MusicXmlMessages.TieWithoutEnd);
        }
    }

    private static bool Meets(LineNote from, int fromBar, LineNote to, int toBar, List<WrittenBar> bars)
    {
        var end = from.Note.At + from.Note.Length;
        var touches =
            fromBar == toBar
                ? end == to.Note.At
                : toBar == fromBar + 1 && end == bars[fromBar].Length && to.Note.At.IsZero;
        return touches && to.Written.TieStop && from.Note.Pitch.Midi == to.Note.Pitch.Midi;
    }
}
