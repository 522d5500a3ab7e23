using System.Collections.Concurrent;
using Stridewright.Music;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Listening;

/// <summary>
/// Takes of settings, for a host that serves several pages at once: kept on the shelf while they are played, and heard when
/// they are done. Calls fail with <see cref="ShelfRefusedException"/>.
/// </summary>
public sealed class TakeDesk(SheetDesk desk, ShelfDesk shelf) : IDisposable
{
    private const int MostAtOnce = 20;

    // The shelf keeps one thing after the other anyway.
    private readonly SemaphoreSlim _turn = new(1);

    private readonly ConcurrentDictionary<string, Recording> _recordings = new(StringComparer.Ordinal);

    /// <summary>Begins a take: from now on it stands on the shelf.</summary>
    /// <returns>Its id.</returns>
    public async Task<string> Begin(Sheet sheet, TakeWish wish, CancellationToken cancellation)
    {
        var kept = await Wanted(sheet, wish, cancellation);
        var id = (await shelf.Takes.Save(kept, cancellation)).Id;
        if (_recordings.Count >= MostAtOnce)
        {
            // Pages that went away without a word.
            _recordings.TryRemove(_recordings.MinBy(r => r.Value.Last).Key, out _);
        }
        _recordings[id] = new Recording(kept);
        return id;
    }

    /// <summary>Takes down what was played next, and keeps it.</summary>
    /// <param name="from">How many events were told before these.</param>
    /// <returns>How many are kept now. Fewer than <paramref name="from"/>: tell again from there.</returns>
    public async Task<int> Add(string id, int from, IReadOnlyList<PlayedEvent> events, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(events);
        if (events.Any(e => !TakeEvents.IsOne(e)))
        {
            throw new ShelfRefusedException(WorkbenchMessages.NoEvent);
        }
        if (!_recordings.TryGetValue(id, out var recording))
        {
            // Begun with another start of the program: the page tells all of it again.
            var kept = (await shelf.Takes.Get(id, cancellation)).Take;
            if (kept.Heard is not null)
            {
                return from + events.Count;
            }
            recording = _recordings.GetOrAdd(id, new Recording(kept));
        }
        await _turn.WaitAsync(cancellation);
        try
        {
            if (recording.Add(from, events))
            {
                await shelf.Takes.Save(id, Take(recording), cancellation);
            }
            return recording.Count;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Ends a take and hears it against its setting.</summary>
    public async Task<TakeSeen> Finish(string id, Sheet sheet, CancellationToken cancellation)
    {
        if (!_recordings.TryGetValue(id, out var recording))
        {
            return await Look(id, sheet, cancellation);
        }
        await _turn.WaitAsync(cancellation);
        try
        {
            var seen = await Heard(id, sheet, Take(recording), cancellation);
            _recordings.TryRemove(id, out _);
            return seen;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>A take from a Standard MIDI File, kept and heard.</summary>
    public async Task<TakeSeen> Bring(Sheet sheet, TakeWish wish, byte[] midi, CancellationToken cancellation)
    {
        using var stream = new MemoryStream(midi, writable: false);
        var reading = desk.Tools.ReadTake(stream);
        if (reading.Value is null)
        {
            var why = reading.Diagnostics is [var fault, ..] ? fault.ToString() : WorkbenchMessages.NotATake;
            throw new ShelfRefusedException(why);
        }
        var kept = await Wanted(sheet, wish with { Speed = 1, Taps = false }, cancellation);
        kept = kept with { Midi = midi.ToValueList(), Tempo = null };
        var id = (await shelf.Takes.Save(kept, cancellation)).Id;
        return await Heard(id, sheet, kept, cancellation);
    }

    /// <summary>A kept take beside a setting, heard again.</summary>
    public async Task<TakeSeen> Look(string id, Sheet sheet, CancellationToken cancellation)
    {
        var kept = (await shelf.Takes.Get(id, cancellation)).Take;
        return kept.Heard is null
            ? await Heard(id, sheet, kept, cancellation)
            : (await Hearing(sheet, kept, cancellation)).Seen(id);
    }

    /// <summary>A kept take as it sounds.</summary>
    /// <param name="isAgainst">With the score, softly.</param>
    public async Task<Heard> Sounding(string id, Sheet sheet, bool isAgainst, CancellationToken cancellation)
    {
        var kept = (await shelf.Takes.Get(id, cancellation)).Take;
        return (await Hearing(sheet, kept, cancellation)).Sounding(isAgainst);
    }

    /// <summary>The drill that answers a remark on a take.</summary>
    /// <param name="kind">Of the remark.</param>
    /// <param name="bar">Id of the first bar that it is about.</param>
    public async Task<DrillFound> Drill(string id, Sheet sheet, string kind, string bar, CancellationToken cancellation)
    {
        var kept = (await shelf.Takes.Get(id, cancellation)).Take;
        using var midi = new MemoryStream([.. kept.Midi], writable: false);
        // The rhythm alone says nothing of keys.
        var played = kept.Taps ? null : desk.Tools.ReadTake(midi).Value;
        var take = played is null ? null : Practice.Listening.Take.Of(played);
        var drill = await desk.InTurn(() => TakeDrills.For(sheet, take, kind, bar, cancellation), cancellation);
        return new(drill is null ? null : await TakeDrills.Seen(desk, drill, cancellation));
    }

    /// <summary>The takes of a piece, the last begun first.</summary>
    /// <param name="piece">Id of the arrangement on the shelf; null: of every piece.</param>
    public async Task<ValueList<TakeItem>> List(string? piece, CancellationToken cancellation) =>
        (await shelf.Takes.List(playerId: null, piece, cancellation))
            .Select(t => TakeHearing.ItemOf(t.Id, t.Take))
            .ToValueList();

    /// <summary>Puts a take aside, from where it can be taken back.</summary>
    public Task Delete(string id, CancellationToken cancellation)
    {
        _recordings.TryRemove(id, out _);
        return shelf.Takes.Delete(id, cancellation);
    }

    public void Dispose() => _turn.Dispose();

    private KeptTake Take(Recording recording) =>
        recording.Begun with
        {
            Midi = desk.Tools.WriteTake(TakeEvents.Performance(recording.Begun.Title, recording.Events)).ToValueList(),
        };

    private async Task<TakeSeen> Heard(string id, Sheet sheet, KeptTake kept, CancellationToken cancellation)
    {
        var hearing = await Hearing(sheet, kept, cancellation);
        await shelf.Takes.Save(id, kept with { Heard = HeardOf.Kept(hearing.Heard) }, cancellation);
        return hearing.Seen(id);
    }

    private Task<TakeHearing> Hearing(Sheet sheet, KeptTake kept, CancellationToken cancellation) =>
        desk.InTurn(
            () =>
                TakeHearing.Of(desk.Tools, sheet, kept)
                ?? throw new ShelfRefusedException(WorkbenchMessages.NothingPlayed),
            cancellation
        );

    private async Task<KeptTake> Wanted(Sheet sheet, TakeWish wish, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(wish);
        var bars = sheet.Score!.Bars;
        var player = string.IsNullOrWhiteSpace(wish.Player)
            ? null
            : await shelf.Players.Named(wish.Player.Trim(), cancellation);
        string? Number(string? id) => bars.FirstOrDefault(b => b.Id == id)?.Number;
        var (first, last) = (Number(wish.From) ?? bars[0].Number, Number(wish.To) ?? bars[^1].Number);
        return new KeptTake
        {
            PlayerId = player?.Id,
            PlayerName = player?.Name ?? "",
            PieceId = wish.Piece,
            Title = sheet.Tune.Title,
            Range = first == bars[0].Number && last == bars[^1].Number ? null : $"{first}-{last}",
            Hand = wish.Hand is "right" or "left" ? wish.Hand : null,
            // A thing of its own to practise, not the piece.
            Step = wish.Taps ? WorkbenchMessages.TappedStep : null,
            Taps = wish.Taps,
            At = TimeProvider.System.GetUtcNow(),
            Tempo = Math.Clamp(wish.Speed, 0.1, 3) * TakeHearing.TempoOf(sheet.Score),
            Midi = desk.Tools.WriteTake(TakeEvents.Performance(sheet.Tune.Title, [])).ToValueList(),
        };
    }

    /// <summary>A take that is being played.</summary>
    private sealed class Recording(KeptTake begun)
    {
        private readonly List<PlayedEvent> _events = [];

        public KeptTake Begun => begun;

        public IReadOnlyList<PlayedEvent> Events => _events;

        public int Count => _events.Count;

        /// <summary>When it was last told something.</summary>
        public long Last { get; private set; } = TimeProvider.System.GetTimestamp();

        /// <returns>True: there was something new.</returns>
        public bool Add(int from, IReadOnlyList<PlayedEvent> events)
        {
            Last = TimeProvider.System.GetTimestamp();
            var known = Count - from;
            if (known < 0 || known >= events.Count)
            {
                return false;
            }
            if (from + events.Count > TakeEvents.Most)
            {
                throw new ShelfRefusedException(WorkbenchMessages.TakeTooLong(TakeEvents.Most));
            }
            _events.AddRange(events.Skip(known));
            return true;
        }
    }
}
