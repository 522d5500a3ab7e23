using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Where the tune is sung: the key in which it lies within the voice, with as much room above as below.</summary>
/// <param name="Tonic">Of the tune's first key, moved.</param>
/// <param name="FromTune">From the tune as written to the tune as sung.</param>
/// <param name="Lowest">Lowest sung note.</param>
/// <param name="Highest">Highest sung note.</param>
internal sealed record SungKey(Tone Tonic, Interval FromTune, Pitch Lowest, Pitch Highest)
{
    private const int FurthestOctaves = 4;

    /// <summary>
    /// The key for a tune, whose form fits it, and a singer; of keys equally well centred the one with the fewest
    /// accidentals, then the nearest. Null: there is none, and the sentence says why.
    /// </summary>
    public static SungKey? Of(Tune tune, Brief brief, out string fault)
    {
        fault = "";
        var sung = Sung(tune, brief);
        if (sung.Count == 0)
        {
            fault = SingingMessages.NothingToSing;
            return null;
        }
        var (low, high) = (sung.Min(), sung.Max());
        var key = tune.Bars[0].Key;
        SungKey In(Tone tonic, int octaves)
        {
            var interval = Register.ToKey(key.Tonic, tonic).Plus(new Interval(7 * octaves, 12 * octaves));
            return new SungKey(tonic, interval, low.Plus(interval), high.Plus(interval));
        }
        if (brief.Singer?.Range is not { } range)
        {
            return In(brief.Tonic ?? key.Tonic, 0);
        }
        var all = TwelveKeys
            .From(key)
            .SelectMany(tonic => Octaves.Select(o => In(tonic, o)))
            .Where(k => k.IsWithin(range))
            .OrderBy(k => k.OffCentre(range))
            .ThenBy(k => Math.Abs(new Key(k.Tonic, key.Mode).Signature))
            .ThenBy(k => Math.Abs(k.FromTune.Semitones))
            .ToList();
        if (brief.Tonic is not { } wanted)
        {
            fault = all.Count > 0 ? "" : SingingMessages.FitsNoKey(low, high, range);
            return all.FirstOrDefault();
        }
        var asked = Octaves
            .Select(o => In(wanted, o))
            .Where(k => k.IsWithin(range))
            .OrderBy(k => k.OffCentre(range))
            .FirstOrDefault();
        if (asked is null)
        {
            var there = In(wanted, 0);
            fault =
                all.Count > 0
                    ? SingingMessages.FitsNotThisKey(there.Lowest, there.Highest, wanted, range, all[0].Tonic)
                    : SingingMessages.FitsNoKey(low, high, range);
        }
        return asked;
    }

    private static IEnumerable<int> Octaves => Enumerable.Range(-FurthestOctaves, 2 * FurthestOctaves + 1);

    // A usual form, chosen later, has the tune's own sections in their own key.
    private static List<Pitch> Sung(Tune tune, Brief brief) =>
        Forming
            .Apply(tune, brief.Form is { IsUsual: true } ? brief with { Form = null } : brief)
            .Sung()
            .Bars.SelectMany(b => b.Notes)
            .Select(n => n.Pitch)
            .ToList();

    private bool IsWithin(VocalRange range) => Lowest.Midi >= range.Lowest.Midi && Highest.Midi <= range.Highest.Midi;

    // Room below against room above, in semitones.
    private int OffCentre(VocalRange range) =>
        Math.Abs(Lowest.Midi - range.Lowest.Midi - (range.Highest.Midi - Highest.Midi));
}
