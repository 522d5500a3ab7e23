using System.Text.Json;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

/// <summary>
/// The measured style against the figures of the independent audit, which shares no code with the project, on settings of
/// our samples and on two-staff scores of others.
/// </summary>
public sealed class ProfileAgainstAuditTests : IDisposable
{
    /// <summary>The audit rounds shares to four places, percentiles to one.</summary>
    private const double Share = 0.000051,
        Percentile = 0.0501;

    private static readonly string[] Kinds = ["single", "two_note", "octave", "octave_inner", "block", "over_octave"];
    private static readonly string[] AuditKinds =
    [
        "single",
        "two-note",
        "octave",
        "octave+inner",
        "3+ under octave",
        "over octave",
    ];
    private static readonly string[] LeftKinds =
    [
        "octave",
        "single",
        "two_note",
        "three_note",
        "four_note",
        "tenth",
        "none",
    ];
    private static readonly string[] AuditLeftKinds =
    [
        "octave",
        "single",
        "2-note",
        "3-note",
        "4-note",
        "tenth",
        "none",
    ];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("classic", 1)]
    [InlineData("classic", 6)]
    [InlineData("stride", 4)]
    public void Settings_of_the_samples_measure_as_the_audit_has_them(string feel, int level)
    {
        var tunes = Directory
            .EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "samples"), "*.abc")
            .Order(StringComparer.Ordinal);
        var request = new ArrangeRequest
        {
            Tunes = tunes.ToValueList(),
            OutputFolder = _folder.Root,
            Formats = [OutputFormat.MusicXml],
            Wishes = new Wishes { Feel = feel, Level = level },
        };
        using var useCases = UseCases.Open();
        var written = useCases.Arrange(request, null, TestContext.Current.CancellationToken).Written;
        Assert.InRange(written.Count, 8, 99);
        Compare([.. written.Select(w => w.Outputs[0].Path)], 20);
    }

    [Fact]
    public void Scores_of_others_measure_as_the_audit_has_them()
    {
        var folder = Corpus.PathOf("corpus/musicxml/valid");
        using var useCases = UseCases.Open();
        var all = Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal).ToValueList();
        var report = useCases.Profile(new ProfileRequest { Scores = all }, TestContext.Current.CancellationToken);
        // The others are lead sheets: they have one staff, and are refused with that reason.
        Assert.NotEmpty(report.Scores);
        Assert.All(
            report.Problems,
            p => Assert.Matches("one staff|no piano score|neither notes nor chord symbols", p.Message)
        );
        Assert.Equal(all.Count, report.Scores.Count + report.Problems.Select(p => p.File).Distinct().Count());
        Compare([.. report.Scores.Select(s => s.File)], 10);
    }

    /// <param name="least">Figures a score, on the average.</param>
    private static void Compare(IReadOnlyList<string> scores, int least)
    {
        using var useCases = UseCases.Open();
        var report = useCases.Profile(
            new ProfileRequest { Scores = scores.ToValueList() },
            TestContext.Current.CancellationToken
        );
        Assert.Empty(report.Problems);
        var (rhythm, texture, left) = (
            Audit.Figures("rhythm", scores),
            Audit.Figures("texture", scores),
            Audit.Figures("left_hand", scores)
        );
        var compared = 0;
        for (var i = 0; i < scores.Count; i++)
        {
            var ours = new Measured(report.Scores[i]);
            compared += Rhythm(ours, rhythm[i]!.Value) + Texture(ours, texture[i]!.Value);
            // The audit's left hand counts 3/4 and 6/8 in as well; ours is measured in duple bars alone.
            compared += report.Scores[i].Style.Metre is "2/4" or "4/4" or "2/2" ? Left(ours, left[i]!.Value) : 0;
        }
        Assert.True(compared >= least * scores.Count, $"{compared} figures compared");
    }

    private static int Rhythm(Measured ours, JsonElement theirs)
    {
        if (!theirs.TryGetProperty("bars", out var bars) || bars.GetInt32() == 0)
        {
            return 0;
        }
        string[] shares =
        [
            "untied_bars",
            "tied_mid_bars",
            "tied_bar_bars",
            "any121_bars",
            "augmented_bars",
            "held_bars",
        ];
        var compared = shares.Sum(key => ours.Same(key, theirs.GetProperty(key), Share));
        compared += ours.Same("lhl_per_bar", theirs.GetProperty("lhl_per_bar"), 0.00051);
        foreach (var half in theirs.GetProperty("half_bar").EnumerateObject())
        {
            compared += ours.Same("half_" + half.Name, half.Value, Share);
        }
        foreach (var lag in theirs.GetProperty("persistence").EnumerateObject())
        {
            compared += ours.Same(lag.Name, lag.Value, lag.Name == "distinct_per_16_bars" ? Percentile : Share);
        }
        return compared;
    }

    private static int Texture(Measured ours, JsonElement theirs)
    {
        var compared = ours.Same("top", theirs.GetProperty("top"), Percentile);
        compared += ours.Same("lowest", theirs.GetProperty("lowest"), Percentile);
        compared += ours.SameKinds("", "", Kinds, AuditKinds, theirs.GetProperty("types"));
        return compared + ours.SameKinds("", "_stays", Kinds, AuditKinds, theirs.GetProperty("persistence"));
    }

    private static int Left(Measured ours, JsonElement theirs)
    {
        if (!theirs.TryGetProperty("strict_share", out _))
        {
            return 0;
        }
        var compared = ours.Same("strict", theirs.GetProperty("strict_share"), Share);
        compared += ours.Same("loose", theirs.GetProperty("loose_share"), Share);
        foreach (var key in (string[])["bass", "chord_low", "chord_high", "chord_span", "leap_up"])
        {
            compared += ours.Same(key, theirs.GetProperty(key), Percentile);
        }
        compared += ours.SameKinds("beat_", "", LeftKinds, AuditLeftKinds, theirs.GetProperty("beat_types"));
        compared += ours.SameKinds("off_", "", LeftKinds, AuditLeftKinds, theirs.GetProperty("off_types"));
        string[] motions = ["fourth_fifth", "step", "same", "octave", "other"];
        string[] theirMotions = ["fourth/fifth", "step", "same", "octave", "other"];
        return compared + ours.SameKinds("next_bass_", "", motions, theirMotions, theirs.GetProperty("bass_motion"));
    }

    /// <summary>Our figures of one score by key.</summary>
    private sealed class Measured(ProfiledScore score)
    {
        private readonly Dictionary<string, ValueList<double>> _figures = score.Style.Figures.ToDictionary(
            f => f.Key,
            f => f.Values
        );

        // 1 where the figure was compared; the audit has none of it where it is null.
        public int Same(string key, JsonElement theirs, double tolerance)
        {
            if (theirs.ValueKind == JsonValueKind.Null)
            {
                return 0;
            }
            var values =
                theirs.ValueKind == JsonValueKind.Array
                    ? [.. theirs.EnumerateArray().Select(v => v.GetDouble())]
                    : new[] { theirs.GetDouble() };
            Assert.True(_figures.TryGetValue(key, out var ours), $"{score.File}: {key} is not measured");
            Assert.Equal(values.Length, ours.Count);
            for (var i = 0; i < values.Length; i++)
            {
                Assert.True(
                    Math.Abs(values[i] - ours[i]) <= tolerance,
                    $"{score.File}: {key} is {ours[i]}, the audit has {values[i]}"
                );
            }
            return 1;
        }

        public int SameKinds(string before, string after, string[] kinds, string[] theirKinds, JsonElement theirs)
        {
            var compared = 0;
            for (var i = 0; i < kinds.Length; i++)
            {
                if (theirs.TryGetProperty(theirKinds[i], out var share))
                {
                    compared += Same(before + kinds[i] + after, share, Share);
                }
            }
            return compared;
        }
    }
}
