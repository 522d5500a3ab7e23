using Microsoft.ClearScript;
using Microsoft.ClearScript.JavaScript;
using Microsoft.ClearScript.V8;

namespace Stridewright.Engraving;

/// <summary>
/// The engraving library (WebAssembly) in a script engine of its own. Serves one thread at a time. After a call was
/// interrupted or failed inside, the library's memory cannot be trusted and the engine must be replaced.
/// </summary>
internal sealed class Engine : IDisposable
{
    private const string Library = "verovio-module.mjs";

    // The heap holds the library's code and a page's text; the library's own memory, about 60 MB for a long piece,
    // lies outside it and has a limit of its own.
    private const int HeapMegabytes = 256;
    private const double MemoryBytes = 768 * 1024 * 1024;

    // Two engines that start at once wait for each other inside the script engine for ever (seen with ClearScript 7.5.1.1).
    private static readonly Lock Starting = new();

    private readonly V8ScriptEngine _engine;
    private readonly ScriptObject _bridge;

    private Engine(V8ScriptEngine engine, ScriptObject bridge) => (_engine, _bridge) = (engine, bridge);

    /// <summary>Starts an engine; takes about a second.</summary>
    /// <exception cref="ScriptInterruptedException">The engine was not ready within the limit.</exception>
    public static Engine Start(TimeSpan limit, CancellationToken cancellation)
    {
        lock (Starting)
        {
            return StartAlone(limit, cancellation);
        }
    }

    private static Engine StartAlone(TimeSpan limit, CancellationToken cancellation)
    {
        var constraints = new V8RuntimeConstraints { MaxOldSpaceSize = HeapMegabytes, MaxNewSpaceSize = 32 };
        var engine = new V8ScriptEngine(constraints, V8ScriptEngineFlags.EnableTaskPromiseConversion);
        try
        {
            engine.MaxRuntimeHeapSize = (UIntPtr)(HeapMegabytes * 1024L * 1024L);
            engine.DocumentSettings.AddSystemDocument(
                Library,
                ModuleCategory.Standard,
                File.ReadAllText(Assets.PathOf(Library))
            );
            engine.Global["memoryLimit"] = MemoryBytes;
            using (Watch(engine, limit, cancellation))
            {
                var ready = engine.Evaluate(
                    new DocumentInfo("bridge.mjs") { Category = ModuleCategory.Standard },
                    Assets.Text("bridge.mjs")
                );
                if (ready is Task task)
                {
                    if (Task.WaitAny([task], (int)limit.TotalMilliseconds, cancellation) < 0)
                    {
                        throw new ScriptInterruptedException();
                    }
                    task.GetAwaiter().GetResult();
                }
            }
            return new Engine(engine, (ScriptObject)engine.Global["bridge"]);
        }
        catch
        {
            engine.Dispose();
            throw;
        }
    }

    /// <summary>Interrupts the script when the time is over or the caller no longer waits.</summary>
    public IDisposable Watch(TimeSpan limit, CancellationToken cancellation) => Watch(_engine, limit, cancellation);

    /// <summary>Sets the options and loads a score; false when the library could not read it.</summary>
    public bool Load(ReadOnlySpan<byte> options, ReadOnlySpan<byte> score) =>
        _bridge.InvokeMethod("load", Pass(options), Pass(score)) is true;

    /// <summary>Lays the loaded score out with changed options.</summary>
    public void LayOutAgain(ReadOnlySpan<byte> options) => _bridge.InvokeMethod("layOutAgain", Pass(options));

    public int PageCount() => Convert.ToInt32(_bridge.InvokeMethod("pageCount"), null);

    /// <summary>A page, from 1, as SVG in UTF-8.</summary>
    public byte[] Page(int number) => Take("page", number);

    public byte[] TimeMap(ReadOnlySpan<byte> options) => Take("timeMap", Pass(options));

    /// <summary>The loaded score as a standard MIDI file.</summary>
    public byte[] Midi() => Convert.FromBase64String(System.Text.Encoding.ASCII.GetString(Take("midi")));

    /// <summary>What the library had to say since the last time, a line each.</summary>
    public string TakeLog() => (string)_bridge.InvokeMethod("takeLog");

    public void Dispose()
    {
        _bridge.Dispose();
        _engine.Dispose();
    }

    private byte[] Take(string method, params object[] arguments)
    {
        using var bytes = (ITypedArray<byte>)_bridge.InvokeMethod(method, arguments);
        return bytes.ToArray();
    }

    private ITypedArray<byte> Pass(ReadOnlySpan<byte> bytes)
    {
        var array = (ITypedArray<byte>)_bridge.InvokeMethod("buffer", bytes.Length);
        if (!bytes.IsEmpty)
        {
            array.Write(bytes, 0, (ulong)bytes.Length, 0);
        }
        return array;
    }

    private static Guard Watch(V8ScriptEngine engine, TimeSpan limit, CancellationToken cancellation) =>
        new(engine, limit, cancellation);

    /// <summary>An interrupt that comes between two calls into the script is lost: so it is repeated until the work is
    /// over.</summary>
    private sealed class Guard : IDisposable
    {
        private static readonly TimeSpan Again = TimeSpan.FromMilliseconds(20);

        private readonly Lock _gate = new();
        private readonly V8ScriptEngine _engine;
        private readonly Timer _timer;
        private readonly CancellationTokenRegistration _registration;
        private bool _over;

        public Guard(V8ScriptEngine engine, TimeSpan limit, CancellationToken cancellation)
        {
            _engine = engine;
            _timer = new Timer(_ => Interrupt(), null, limit, Again);
            _registration = cancellation.Register(() => _timer.Change(TimeSpan.Zero, Again));
        }

        public void Dispose()
        {
            lock (_gate)
            {
                _over = true;
            }
            _registration.Dispose();
            _timer.Dispose();
            _engine.CancelInterrupt();
        }

        private void Interrupt()
        {
            lock (_gate)
            {
                if (!_over)
                {
                    _engine.Interrupt();
                }
            }
        }
    }
}
