namespace Stridewright.Music;

/// <summary>The tones of each kind of chord (MusicXML 4.0, definition of <c>kind</c>).</summary>
internal static class ChordKinds
{
    // Degree text: a number with its accidentals relative to the major scale, as musicians write them.
    private static readonly Dictionary<ChordKind, Interval[]> Table = new()
    {
        [ChordKind.Major] = Of("1 3 5"),
        [ChordKind.Minor] = Of("1 b3 5"),
        [ChordKind.Augmented] = Of("1 3 #5"),
        [ChordKind.Diminished] = Of("1 b3 b5"),
        [ChordKind.Dominant] = Of("1 3 5 b7"),
        [ChordKind.MajorSeventh] = Of("1 3 5 7"),
        [ChordKind.MinorSeventh] = Of("1 b3 5 b7"),
        [ChordKind.DiminishedSeventh] = Of("1 b3 b5 bb7"),
        [ChordKind.AugmentedSeventh] = Of("1 3 #5 b7"),
        [ChordKind.HalfDiminished] = Of("1 b3 b5 b7"),
        [ChordKind.MajorMinor] = Of("1 b3 5 7"),
        [ChordKind.MajorSixth] = Of("1 3 5 6"),
        [ChordKind.MinorSixth] = Of("1 b3 5 6"),
        [ChordKind.DominantNinth] = Of("1 3 5 b7 9"),
        [ChordKind.MajorNinth] = Of("1 3 5 7 9"),
        [ChordKind.MinorNinth] = Of("1 b3 5 b7 9"),
        [ChordKind.Dominant11th] = Of("1 3 5 b7 9 11"),
        [ChordKind.Major11th] = Of("1 3 5 7 9 11"),
        [ChordKind.Minor11th] = Of("1 b3 5 b7 9 11"),
        [ChordKind.Dominant13th] = Of("1 3 5 b7 9 11 13"),
        [ChordKind.Major13th] = Of("1 3 5 7 9 11 13"),
        [ChordKind.Minor13th] = Of("1 b3 5 b7 9 11 13"),
        [ChordKind.SuspendedSecond] = Of("1 2 5"),
        [ChordKind.SuspendedFourth] = Of("1 4 5"),
        // The functional sixths as their usual root-named spellings: the Neapolitan as a major chord on its root,
        // the augmented sixths over the lowered sixth degree.
        [ChordKind.Neapolitan] = Of("1 3 5"),
        [ChordKind.Italian] = Of("1 3 #6"),
        [ChordKind.French] = Of("1 3 #4 #6"),
        [ChordKind.German] = Of("1 3 5 #6"),
        [ChordKind.Pedal] = Of("1"),
        [ChordKind.Power] = Of("1 5"),
        [ChordKind.Tristan] = Of("1 #4 #6 #9"),
        [ChordKind.Other] = Of("1"),
        [ChordKind.None] = [],
    };

    public static ValueList<Interval> IntervalsOf(ChordSymbol chord)
    {
        var kind = Table[chord.Kind];
        if (chord.Degrees.Count == 0)
        {
            return ValueList.Create<Interval>(kind);
        }
        var tones = kind.ToList();
        foreach (var degree in chord.Degrees)
        {
            Apply(tones, degree);
        }
        return tones.Distinct().OrderBy(i => i.Steps).ThenBy(i => i.Semitones).ToValueList();
    }

    private static void Apply(List<Interval> tones, ChordDegree degree)
    {
        if (degree.Value is < 1 or > 13)
        {
            return;
        }
        var at = tones.FindIndex(i => i.Steps == degree.Value - 1);
        var dominant = AboveRoot(degree.Value, degree.Value == 7 ? -1 : 0);
        switch (degree.Change)
        {
            case DegreeChange.Subtract when at >= 0:
                tones.RemoveAt(at);
                break;
            case DegreeChange.Alter when at >= 0:
                tones[at] = tones[at] with { Semitones = tones[at].Semitones + degree.Alter };
                break;
            case DegreeChange.Add or DegreeChange.Alter:
                tones.Add(dominant with { Semitones = dominant.Semitones + degree.Alter });
                break;
            default:
                break;
        }
    }

    private static Interval[] Of(string degrees) =>
        degrees
            .Split(' ')
            .Select(text =>
            {
                var number = text.TrimStart('b', '#');
                var alter = text.Count(c => c == '#') - (text.Length - number.Length - text.Count(c => c == '#'));
                return AboveRoot(int.Parse(number, System.Globalization.CultureInfo.InvariantCulture), alter);
            })
            .ToArray();

    private static Interval AboveRoot(int degree, int alter)
    {
        ReadOnlySpan<int> major = [0, 2, 4, 5, 7, 9, 11];
        var steps = degree - 1;
        return new Interval(steps, 12 * (steps / 7) + major[steps % 7] + alter);
    }
}
