using Stridewright.Workbench.Handouts;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>The use cases on real files.</summary>
public sealed class UseCases : IUseCases
{
    private readonly ITools _tools;

    internal UseCases(ITools tools) => _tools = tools;

    /// <summary>The use cases with the project's own readers, arranger, judge and writers.</summary>
    public static UseCases Open() => new(new StandardTools());

    public ArrangeReport Arrange(
        ArrangeRequest request,
        IProgress<ArrangeProgress>? progress = null,
        CancellationToken cancellation = default
    ) => new ArrangeFiles(_tools, request, progress).Run(cancellation);

    public CheckReport Check(CheckRequest request, CancellationToken cancellation = default) =>
        new CheckScore(_tools, request).Run(cancellation);

    public ProfileReport Profile(ProfileRequest request, CancellationToken cancellation = default) =>
        new ProfileScores(_tools, request).Run(cancellation);

    public FingerReport Finger(FingerRequest request, CancellationToken cancellation = default) =>
        new FingerScores(_tools, request).Run(cancellation);

    public SpotReport Spots(SpotRequest request, CancellationToken cancellation = default) =>
        new SpotWork(_tools, request).Run(cancellation);

    public PlayerReport Player(PlayerRequest request, CancellationToken cancellation = default) =>
        new PlayerWork(_tools, request).Run(cancellation);

    public CompareReport Compare(CompareRequest request, CancellationToken cancellation = default) =>
        new CompareTake(_tools, request).Run(cancellation);

    public LessonReport Lesson(LessonRequest request, CancellationToken cancellation = default) =>
        new MakeLesson(_tools, request).Run(cancellation);

    public HandoutReport Handout(HandoutRequest request, CancellationToken cancellation = default) =>
        new HandoutFiles(_tools, request).Run(cancellation);

    public void Dispose() => _tools.Dispose();
}
