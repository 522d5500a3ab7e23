namespace Stridewright.Arranging;

/// <summary>
/// Devices of the right hand that have a rhythm of their own. The bars that ask for one are left plain by the ragging, and
/// here their tune is placed and filled as the device has it.
/// </summary>
internal static class Devices
{
    /// <summary>True where the tune waits for its device: the ragging leaves it as it stands.</summary>
    public static bool StandsPlain(RightManner manner) =>
        manner
            is RightManner.Plain
                or RightManner.Silent
                or RightManner.FillsOnly
                or RightManner.ThumbTune
                or RightManner.Obbligato
                or RightManner.ThreeAgainstFour
                or RightManner.ParallelRun;

    /// <summary>True where nothing is filled but by the device itself.</summary>
    public static bool IsUnfilled(RightManner manner) =>
        StandsPlain(manner) || manner is RightManner.Call or RightManner.Answer or RightManner.Tremolo;

    /// <summary>True where a bar may go without: asked for, yet tied to what the tune has there.</summary>
    public static bool IsOccasional(RightManner manner) =>
        manner is RightManner.Answer or RightManner.Tremolo or RightManner.CrushedNotes;

    public static Ragged Place(Lattice lattice, Ragged ragged, Brief brief)
    {
        var onsets = ThreeAgainstFour.Place(lattice, ragged.Onsets);
        onsets = ParallelRun.Place(lattice, onsets, brief);
        return ragged with { Onsets = ThumbTune.Place(lattice, onsets) };
    }

    /// <summary>Neighbouring bars that ask for one manner, within a phrase: index of the first and the one after the
    /// last.</summary>
    public static IEnumerable<(int First, int End)> Stretches(Lattice lattice, RightManner manner)
    {
        for (var i = 0; i < lattice.Bars.Length; i++)
        {
            if (!Asks(i))
            {
                continue;
            }
            var end = i + 1;
            while (
                end < lattice.Bars.Length
                && Asks(end)
                && !lattice.Bars[end].StartsPhrase
                && !lattice.Bars[end].SeamBefore
            )
            {
                end++;
            }
            yield return (i, end);
            i = end - 1;
        }

        bool Asks(int bar) => lattice.Bars[bar].Treatment.Right == manner && IsFree(lattice.Bars[bar], manner);
    }

    /// <summary>True where a device may change the right hand: what is held stays, but for the tune that is in the
    /// left.</summary>
    public static bool IsFree(LatticeBar bar, RightManner manner) =>
        bar.Held?.Right is null || manner == RightManner.ThumbTune;
}
