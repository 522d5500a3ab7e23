using System.Runtime.InteropServices;
using Microsoft.ClearScript;
using Microsoft.ClearScript.V8;
using Stridewright.Proof.Tests.Chords;

[assembly: AssemblyFixture(typeof(TheoryLibrary))]

namespace Stridewright.Proof.Tests.Chords;

/// <summary>The npm library "tonal", a general library of music theory, in a script engine.</summary>
public sealed class TheoryLibrary : IDisposable
{
    private const string Bridge = """
        globalThis.bridge = {
            kinds: () => Tonal.ChordType.all().flatMap((t) => t.aliases.map((a) => a + "|" + t.intervals.join(" "))).join("\n"),
            read: (symbol) => Tonal.Chord.get(symbol).notes.join(" "),
            lowest: (symbol) => { const chord = Tonal.Chord.get(symbol); return chord.bass || chord.tonic; },
            above: (root, intervals) => intervals.split(" ").map((i) => Tonal.Note.transpose(root, i)).join(" "),
        };
        """;

    private readonly Lazy<V8ScriptEngine> _engine = new(Start);

    /// <summary>Every name of a kind of chord that the library knows, with its intervals ("1P 3M 5P").</summary>
    public IReadOnlyList<(string Name, string Intervals)> Kinds =>
        [.. Call("kinds").Split('\n').Select(line => line.Split('|')).Select(row => (row[0], row[1]))];

    /// <summary>The notes of a chord symbol ("C E G"), lowest first; empty when the library cannot read it.</summary>
    public string Read(string symbol) => Call("read", symbol);

    /// <summary>The lowest note of a chord symbol: its bass, or else its root.</summary>
    public string Lowest(string symbol) => Call("lowest", symbol);

    /// <summary>The notes at intervals above a root.</summary>
    public string Above(string root, string intervals) => Call("above", root, intervals);

    public void Dispose()
    {
        if (_engine.IsValueCreated)
        {
            _engine.Value.Dispose();
        }
    }

    private string Call(string function, params object[] arguments)
    {
        Assert.SkipUnless(
            OperatingSystem.IsLinux() && RuntimeInformation.ProcessArchitecture == Architecture.X64,
            "the script engine is here for Linux x64 only"
        );
        return (string)((ScriptObject)_engine.Value.Global["bridge"]).InvokeMethod(function, arguments);
    }

    private static V8ScriptEngine Start()
    {
        var engine = new V8ScriptEngine();
        engine.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "tonal.min.js")));
        engine.Execute(Bridge);
        return engine;
    }
}
