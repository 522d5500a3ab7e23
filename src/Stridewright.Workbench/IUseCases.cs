using Stridewright.Workbench.Handouts;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>What a host can ask for. Not for use by several threads at once.</summary>
public interface IUseCases : IDisposable
{
    /// <summary>Arranges files, folders and books and writes what was asked for. Never throws for what it is given.</summary>
    /// <param name="cancellation">Stops between two steps; what is finished by then stays and is reported.</param>
    ArrangeReport Arrange(
        ArrangeRequest request,
        IProgress<ArrangeProgress>? progress = null,
        CancellationToken cancellation = default
    );

    /// <summary>Judges one score for a pair of hands. Never throws for what it is given.</summary>
    CheckReport Check(CheckRequest request, CancellationToken cancellation = default);

    /// <summary>Measures the style of two-staff scores, and draws it where asked for. Never throws for what it is given.</summary>
    ProfileReport Profile(ProfileRequest request, CancellationToken cancellation = default);

    /// <summary>Shows, makes and measures a player. Never throws for what it is given but when it is cancelled.</summary>
    PlayerReport Player(PlayerRequest request, CancellationToken cancellation = default);

    /// <summary>Fingers two-staff scores and writes them. Never throws for what it is given.</summary>
    FingerReport Finger(FingerRequest request, CancellationToken cancellation = default);

    /// <summary>Works on the bars of an arrangement file: other ways, keeping, releasing, edited bars. Never throws for what
    /// it is given.</summary>
    SpotReport Spots(SpotRequest request, CancellationToken cancellation = default);

    /// <summary>Hears a take against a score. Never throws for what it is given.</summary>
    CompareReport Compare(CompareRequest request, CancellationToken cancellation = default);

    /// <summary>Makes a lesson on a piece for a player and writes it. Never throws for what it is given.</summary>
    LessonReport Lesson(LessonRequest request, CancellationToken cancellation = default);

    /// <summary>Makes a one-page hand-out and writes it. Never throws for what it is given.</summary>
    HandoutReport Handout(HandoutRequest request, CancellationToken cancellation = default);
}
