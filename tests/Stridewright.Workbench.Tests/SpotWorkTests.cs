using System.Xml.Linq;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

/// <summary>Bars of an arrangement file kept, chosen, released and rewritten, on real files.</summary>
public sealed class SpotWorkTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("stridewright-spots-").FullName;
    private readonly UseCases _useCases = UseCases.Open();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Stored => Path.Combine(_folder, "ferry.stridewright");

    public void Dispose()
    {
        _useCases.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void A_way_that_is_listed_can_be_chosen_and_let_go_again()
    {
        var before = Arranged(Save());
        var ways = Work(SpotAction.Ways, bar: "6").Ways;
        Assert.Contains(ways, w => w.Name == "rhythm-1");
        Assert.Contains(ways, w => w.Name == "left-hand-1");
        Assert.All(ways, w => Assert.True(w.Changes.Count > 0 && w.Dearer >= 0));

        foreach (var way in ways.Where(w => w.Name.EndsWith("-1", StringComparison.Ordinal)))
        {
            var chosen = Work(SpotAction.Choose, bar: "6", way: way.Name);
            var hand = way.Name.StartsWith("left", StringComparison.Ordinal) ? "left" : "right";
            Assert.Equal([new KeptSpot("6", hand)], chosen.Kept);
            Assert.Equal(way.OtherBars.Append("6").Order(), chosen.Changed.Order());
            var after = Arranged(Again());
            Assert.NotEqual(before, after);

            var released = Work(SpotAction.Release, bar: "6");
            Assert.Empty(released.Kept);
            Assert.Equal(before, Arranged(Again()));
        }
    }

    [Fact]
    public void What_is_kept_stays_when_the_brief_changes()
    {
        Save();
        var kept = Work(SpotAction.Keep, bar: "5");
        Assert.Equal(2, kept.Kept.Count);
        Assert.Empty(kept.Changed);
        var before = Bars(Again());
        var after = Bars(Again("--raggedness", raggedness: 1));
        Assert.Equal(before[5], after[5]);
        Assert.NotEqual(before, after);
    }

    // As a notation program gives it back: without our ids, one chord of the left hand written otherwise.
    [Fact]
    public void An_edited_bar_comes_back_and_is_kept()
    {
        var file = Save();
        var document = XDocument.Load(file);
        document.Descendants().Attributes("id").Where(a => a.Parent!.Name == "note").Remove();
        var bar = document.Descendants("measure").First(m => (string?)m.Attribute("number") == "4");
        var bass = bar.Elements("note")
            .First(n => (string?)n.Element("staff") == "2" && n.Element("pitch") is not null);
        var octave = bass.Element("pitch")!.Element("octave")!;
        octave.Value = ((int)octave + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
        var edited = Path.Combine(_folder, "edited.musicxml");
        document.Save(edited);

        var report = Work(SpotAction.Rewrite, edited: edited);

        Assert.Equal([new KeptSpot("4", "left")], report.Kept);
        Assert.Contains("4", report.Changed);
        var again = Work(SpotAction.Rewrite, edited: Again());
        Assert.Empty(again.Changed);
    }

    [Fact]
    public void An_unchanged_score_changes_nothing()
    {
        var file = Save();
        var report = Work(SpotAction.Rewrite, edited: file);
        Assert.Empty(report.Kept);
        Assert.Empty(report.Changed);
    }

    // A left hand's bar over D7, put over C7: every tone lies a whole tone lower (the root goes down from D to C).
    [Fact]
    public void A_figure_is_put_over_other_chords()
    {
        Save();
        var stored = _useCases.Spots(
            new SpotRequest
            {
                File = Stored,
                Action = SpotAction.Figure,
                Figure = "two step",
                Bar = "2",
                Hand = "left",
            },
            Cancel
        );
        Assert.Equal(["two step"], stored.Figures);
        var used = _useCases.Spots(
            new SpotRequest
            {
                File = Stored,
                Action = SpotAction.Use,
                Figure = "two step",
                Bar = "4",
            },
            Cancel
        );
        Assert.True(used.Problems.Count == 0, string.Join('\n', used.Problems));
        Assert.Equal([new KeptSpot("4", "left")], used.Kept);
        var bars = XDocument.Load(Again()).Descendants("measure").ToDictionary(m => (string)m.Attribute("number")!);
        Assert.NotEmpty(Lefts(bars["2"]));
        Assert.Equal(Lefts(bars["2"]).Select(k => k - 2), Lefts(bars["4"]));

        static List<int> Lefts(XElement bar) =>
            [
                .. bar.Elements("note")
                    .Where(n => (string?)n.Element("staff") == "2" && n.Element("pitch") is not null)
                    .Select(n =>
                        Pitch
                            .Parse(
                                (string)n.Element("pitch")!.Element("step")!
                                    + (
                                        (int?)n.Element("pitch")!.Element("alter") switch
                                        {
                                            1 => "#",
                                            -1 => "b",
                                            _ => "",
                                        }
                                    )
                                    + (string)n.Element("pitch")!.Element("octave")!
                            )
                            .Midi
                    ),
            ];
    }

    [Theory]
    [InlineData("99", null, "there is no bar 99")]
    [InlineData("6", "rhythm-77", "there is no way rhythm-77")]
    public void What_is_not_there_is_told(string bar, string? way, string expected)
    {
        Save();
        var text = File.ReadAllText(Stored);
        var action = way is null ? SpotAction.Keep : SpotAction.Choose;
        var report = _useCases.Spots(
            new SpotRequest
            {
                File = Stored,
                Action = action,
                Bar = bar,
                Way = way,
            },
            Cancel
        );
        Assert.Contains(expected, report.Problems.Single().Message, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Stored));
    }

    // Figures of one file go into another tune, are saved with it, and are put there once for all.
    [Fact]
    public void Figures_of_a_file_are_put_where_their_kind_belongs()
    {
        Save();
        foreach (var (name, kind) in new[] { ("steps", "run"), ("close", "ending"), ("loose", null as string) })
        {
            var stored = _useCases.Spots(
                new SpotRequest
                {
                    File = Stored,
                    Action = SpotAction.Figure,
                    Figure = name,
                    Bar = "8",
                    FigureKind = kind,
                },
                Cancel
            );
            Assert.Empty(stored.Problems);
        }
        var other = Path.Combine(_folder, "other.stridewright");
        var tune = Path.Combine(Corpus.CheckoutRoot, "samples", "rope-and-lantern.abc");
        var request = Request([tune]) with { Figures = Stored, Save = other };
        var first = Arranged(Outcome(request));
        var text = File.ReadAllText(other);
        Assert.Contains("figure steps", text, StringComparison.Ordinal);
        Assert.Contains("figure loose", text, StringComparison.Ordinal);
        Assert.Contains("kept", text, StringComparison.Ordinal);
        Assert.NotEqual(first, Arranged(Outcome(Request([tune]))));
        Assert.Equal(first, Arranged(Outcome(Request([other]))));
        var none = _useCases.Arrange(Request([tune]) with { Figures = tune }, null, Cancel);
        Assert.Equal(ArrangeOutcome.BadWish, none.Outcome);
        Assert.Contains("no arrangement file", none.Problems.Single().Message, StringComparison.Ordinal);
        var broken = Path.Combine(_folder, "broken.stridewright");
        File.WriteAllText(
            broken,
            File.ReadAllText(Stored).Replace("left 1 run", "left 1 rum", StringComparison.Ordinal)
        );
        var unread = _useCases.Arrange(Request([tune]) with { Figures = broken }, null, Cancel).Problems.Single();
        Assert.Equal("steps", unread.Place);
        Assert.Contains("'left 1 rum", unread.Message, StringComparison.Ordinal);
        var use = new SpotRequest
        {
            File = Stored,
            Action = SpotAction.Use,
            Figure = "loose",
        };
        var loose = _useCases.Spots(use, Cancel);
        Assert.Contains("has no kind", loose.Problems.Single().Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_kind_of_file_is_refused()
    {
        var tune = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");
        var report = _useCases.Spots(
            new SpotRequest
            {
                File = tune,
                Action = SpotAction.Ways,
                Bar = "1",
            },
            Cancel
        );
        Assert.Contains("--save", report.Problems.Single().Message, StringComparison.Ordinal);
    }

    private string Save()
    {
        var request = Request([Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc")]) with { Save = Stored };
        return Outcome(request with { Wishes = new Wishes { Level = 5 } });
    }

    private string Again(string? _ = null, double? raggedness = null) =>
        Outcome(Request([Stored]) with { Wishes = new Wishes { Raggedness = raggedness } });

    private ArrangeRequest Request(ValueList<string> tunes) =>
        new()
        {
            Tunes = tunes,
            OutputFolder = Path.Combine(_folder, "out"),
            Formats = [OutputFormat.MusicXml],
            Replace = true,
        };

    private string Outcome(ArrangeRequest request)
    {
        var report = _useCases.Arrange(request, null, Cancel);
        Assert.True(report.Problems.Count == 0, string.Join('\n', report.Problems));
        return report.Written[0].Outputs.First(o => o.Path.EndsWith(".musicxml", StringComparison.Ordinal)).Path;
    }

    private SpotReport Work(SpotAction action, string? bar = null, string? way = null, string? edited = null)
    {
        var request = new SpotRequest
        {
            File = Stored,
            Action = action,
            Bar = bar,
            Way = way,
            Edited = edited,
        };
        var report = _useCases.Spots(request, Cancel);
        Assert.True(report.Problems.Count == 0, string.Join('\n', report.Problems));
        return report;
    }

    private static string Arranged(string file) => string.Join('\n', Bars(file));

    private static List<string> Bars(string file) =>
        [.. XDocument.Load(file).Descendants("measure").Select(m => m.ToString())];
}
