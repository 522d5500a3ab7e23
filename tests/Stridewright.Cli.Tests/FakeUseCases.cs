using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Handouts;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Tests;

/// <summary>Use cases that remember what they were asked and answer what the test wants.</summary>
internal sealed class FakeUseCases : IUseCases
{
    public ArrangeRequest? Asked { get; private set; }

    public CheckRequest? AskedToCheck { get; private set; }

    public PlayerRequest? AskedForPlayer { get; private set; }

    public PlayerReport PlayerAnswer { get; init; } = new();

    public PlayerReport Player(PlayerRequest request, CancellationToken cancellation = default)
    {
        AskedForPlayer = request;
        return PlayerAnswer;
    }

    public ArrangeReport Answer { get; init; } = ReportOf(ArrangeOutcome.AllWritten, Written("ferry"));

    public CheckReport CheckAnswer { get; init; } =
        new()
        {
            Outcome = CheckOutcome.Playable,
            File = "rag.musicxml",
            Score = Judged(),
        };

    public static ArrangeReport ReportOf(ArrangeOutcome outcome, params WrittenTune[] written) =>
        new() { Outcome = outcome, Written = written.ToValueList() };

    public static EffortReport Effort { get; } =
        new(31.4, new HandEffortReport(4.25, 9.75, 0.02, 0.61), new HandEffortReport(3, 11, 0, 0.8));

    public static WrittenTune Written(string name, string title = "The Ferry Bell") =>
        new()
        {
            File = name + ".abc",
            Title = title,
            Outputs =
            [
                new WrittenFile($"out/{name}.musicxml", 100, false),
                new WrittenFile($"out/{name}.mid", 50, true),
            ],
            Setting = new Setting
            {
                Feel = "classic",
                Key = "F major",
                Metre = "2/4",
                BeatsPerMinute = 96,
                Beat = "quarter",
                LeftLevel = 3,
                RightLevel = 4,
                Raggedness = 0.5,
                Seed = 1,
                Hands = new HandsUsed(205, 165.1, false),
                Bars = 32,
                Seconds = 83.6,
                Tune = new TuneSurvival(120, 119, 14, 2, 40),
                Effort = Effort,
                HardestBars = [new HardBar("12", 48), new HardBar("7", 45.2)],
                Remarks = [new Remark("note", "bar 5", "the chord is rolled")],
            },
        };

    public static JudgedScore Judged(params UnplayableSpot[] spots) =>
        new()
        {
            Title = "A Rag",
            Bars = 16,
            Hands = new HandsUsed(185, 165.1, false),
            Effort = Effort,
            Spots = spots.ToValueList(),
        };

    public ArrangeReport Arrange(
        ArrangeRequest request,
        IProgress<ArrangeProgress>? progress = null,
        CancellationToken cancellation = default
    )
    {
        Asked = request;
        progress?.Report(new ArrangeProgress(0, 3, "a[b].abc"));
        progress?.Report(new ArrangeProgress(3, 3, ""));
        return cancellation.IsCancellationRequested ? ReportOf(ArrangeOutcome.Cancelled) : Answer;
    }

    public CheckReport Check(CheckRequest request, CancellationToken cancellation = default)
    {
        AskedToCheck = request;
        return CheckAnswer;
    }

    public ProfileRequest? AskedToProfile { get; private set; }

    public ProfileReport ProfileAnswer { get; init; } = new();

    public ProfileReport Profile(ProfileRequest request, CancellationToken cancellation = default)
    {
        AskedToProfile = request;
        return ProfileAnswer;
    }

    public FingerRequest? AskedToFinger { get; private set; }

    public FingerReport FingerAnswer { get; init; } = new();

    public FingerReport Finger(FingerRequest request, CancellationToken cancellation = default)
    {
        AskedToFinger = request;
        return FingerAnswer;
    }

    public SpotRequest? AskedOfSpots { get; private set; }

    public SpotReport SpotAnswer { get; init; } = new() { File = "ferry.stridewright" };

    public SpotReport Spots(SpotRequest request, CancellationToken cancellation = default)
    {
        AskedOfSpots = request;
        return SpotAnswer;
    }

    public CompareRequest? AskedToCompare { get; private set; }

    public CompareReport CompareAnswer { get; init; } =
        new()
        {
            Outcome = CompareOutcome.Compared,
            Score = "rag.musicxml",
            Take = "monday.mid",
        };

    public CompareReport Compare(CompareRequest request, CancellationToken cancellation = default)
    {
        AskedToCompare = request;
        return CompareAnswer;
    }

    public HandoutRequest? AskedToHandOut { get; private set; }

    public HandoutReport HandoutAnswer { get; init; } = new() { File = "rag.abc" };

    public HandoutReport Handout(HandoutRequest request, CancellationToken cancellation = default)
    {
        AskedToHandOut = request;
        return HandoutAnswer;
    }

    public void Dispose() { }
}

/// <summary>One run of the command line in this process.</summary>
internal sealed record CliRun(int ExitCode, string Output, string Error)
{
    public static CliRun Of(FakeUseCases useCases, params string[] args) =>
        Of(useCases, false, TestContext.Current.CancellationToken, args);

    public static CliRun Of(FakeUseCases useCases, bool watched, CancellationToken cancellation, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var app = new CommandLineApp(() => useCases, output, error) { SomebodyLooksOn = watched };
        return new CliRun(app.Run(args, cancellation), output.ToString(), error.ToString());
    }
}
