using System.Globalization;
using System.Numerics;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Reads key, time and transposition (MusicXML 4.0, <c>attributes</c>).</summary>
internal static class AttributeReader
{
    /// <summary>The metre: beats such as <c>3+2</c> and several beats over beat types are summed. Null with a
    /// finding when it makes no sense.</summary>
    public static Metre? ReadMetre(Element time, Place place, Findings findings)
    {
        var beats = time.All("beats").Select(b => b.Text).ToList();
        var types = time.All("beat-type").Select(b => b.Text).ToList();
        var total = ScoreTime.Zero;
        var unit = 1;
        var good = beats.Count > 0 && beats.Count == types.Count && beats.Count <= 8;
        for (var i = 0; good && i < beats.Count; i++)
        {
            good =
                int.TryParse(types[i], NumberStyles.None, CultureInfo.InvariantCulture, out var type)
                && type is >= 1 and <= 64
                && BitOperations.IsPow2(type);
            var count = 0;
            foreach (var summand in beats[i].Split('+'))
            {
                good =
                    good
                    && int.TryParse(summand.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                    && n is >= 1 and <= 64
                    && (count += n) <= 64;
            }
            if (good)
            {
                total += new ScoreTime(count, type);
                unit = Math.Max(unit, type);
            }
        }
        var length = total * unit;
        if (!good || length.Denominator != 1 || length.Numerator > 64)
        {
            findings.Warn(
                place,
                MusicXmlMessages.BadTime(Element.Clean(string.Join(',', beats)), Element.Clean(string.Join(',', types)))
            );
            return null;
        }
        var metre = new Metre((int)length.Numerator, unit);
        return (time["symbol"], metre) switch
        {
            ("common", { Count: 4, Unit: 4 }) => metre with { Sign = MetreSign.Common },
            ("cut", { Count: 2, Unit: 2 }) => metre with { Sign = MetreSign.Cut },
            _ => metre,
        };
    }

    /// <summary>The key as written. Null with a finding when it is none of the usual kind.</summary>
    public static Key? ReadKey(Element key, Place place, Findings findings)
    {
        if (key.TextOf("fifths") is not { } text)
        {
            findings.Warn(place, MusicXmlMessages.OddKey);
            return null;
        }
        if (
            !int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var fifths)
            || fifths is < -MusicXmlLimits.Signature or > MusicXmlLimits.Signature
        )
        {
            findings.Warn(place, MusicXmlMessages.BadKey(Element.Clean(text)));
            return null;
        }
        var mode = key.TextOf("mode")?.ToLowerInvariant() switch
        {
            "minor" or "aeolian" => Mode.Minor,
            "dorian" => Mode.Dorian,
            "phrygian" => Mode.Phrygian,
            "lydian" => Mode.Lydian,
            "mixolydian" => Mode.Mixolydian,
            "locrian" => Mode.Locrian,
            _ => Mode.Major,
        };
        return Key.FromSignature(fifths, mode);
    }

    /// <summary>From written to sounding pitch; the unison with a finding when it makes no sense.</summary>
    public static Interval ReadTranspose(Element transpose, Place place, Findings findings)
    {
        int? Number(string name) =>
            transpose.TextOf(name) is not { } text ? 0
            : int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n)
            && n is >= -48 and <= 48
                ? n
            : null;
        if (
            Number("chromatic") is not { } chromatic
            || Number("diatonic") is not { } diatonic
            || Number("octave-change") is not { } octaves
            || octaves is < -4 or > 4
        )
        {
            findings.Warn(place, MusicXmlMessages.BadTranspose);
            return Interval.Unison;
        }
        if (!transpose.Has("diatonic"))
        {
            ReadOnlySpan<int> steps = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6];
            var within = ((chromatic % 12) + 12) % 12;
            diatonic = (chromatic - within) / 12 * 7 + steps[within];
        }
        var interval = new Interval(diatonic + 7 * octaves, chromatic + 12 * octaves);
        if (Math.Abs(interval.Fifths) > 24)
        {
            findings.Warn(place, MusicXmlMessages.BadTranspose);
            return Interval.Unison;
        }
        return interval;
    }
}
