using System.Text;
using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Inputs;

/// <summary>An arrangement file with the tune in it.</summary>
internal sealed record StoredArrangement(ArrangementFile File, Tune Tune)
{
    /// <summary>Reads one; the value is null, with at least one error, when it or its tune cannot be read. Places in the
    /// tune are lines of the file.</summary>
    public static Reading<StoredArrangement> Read(ITools tools, byte[] bytes)
    {
        if (InputText.TryDecode(bytes, ArrangementText.MostCharacters, out var problem) is not { } text)
        {
            return Failed(problem);
        }
        var reading = ArrangementText.Read(text);
        if (reading.Value is not { } file)
        {
            return new(null, reading.Diagnostics);
        }
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(file.Tune), writable: false);
        var book = tools.ReadAbc(stream, part: null);
        var findings = book.Diagnostics.Select(d => InFile(d, file.TuneLine)).ToValueList();
        return book.Value switch
        {
            [var tune] => new(new StoredArrangement(file, tune), findings),
            { Count: > 1 } tunes => Failed(WorkbenchMessages.ManyTunesStored(tunes.Count)),
            _ => new(null, findings),
        };
    }

    /// <summary>Reads a file; null, with the problems, where it is none or cannot be read.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static StoredArrangement? At(
        ITools tools,
        string file,
        out List<Problem> problems,
        CancellationToken cancellation
    )
    {
        problems = [];
        if (!System.IO.File.Exists(file))
        {
            problems.Add(new Problem(file, null, "", WorkbenchMessages.NotFound));
            return null;
        }
        if (InputBytes.TryRead(file, cancellation, out var problem) is not { } bytes)
        {
            problems.Add(new Problem(file, null, "", problem));
            return null;
        }
        if (InputKinds.Of(file, bytes) != InputKind.Arrangement)
        {
            problems.Add(new Problem(file, null, "", WorkbenchMessages.NotAnArrangement));
            return null;
        }
        var reading = Read(tools, bytes);
        problems.AddRange(
            reading
                .Diagnostics.Where(d => d.Severity == Severity.Error)
                .Select(d => new Problem(file, null, d.Place.ToString(), d.Message))
        );
        return reading.Value;
    }

    private static Diagnostic InFile(Diagnostic finding, int tuneLine) =>
        finding with
        {
            Place = finding.Place with { Line = finding.Place.Line + tuneLine - 1 },
        };

    private static Reading<StoredArrangement> Failed(string message) =>
        new(null, [new Diagnostic(Severity.Error, Place.Whole, message)]);
}
