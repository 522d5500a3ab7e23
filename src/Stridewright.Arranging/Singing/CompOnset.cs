namespace Stridewright.Arranging;

/// <summary>What the right hand does at an onset beside a voice.</summary>
internal enum CompKind
{
    /// <summary>A chord off the beat, while the voice is at work.</summary>
    Chord,

    /// <summary>A note of a fill, while the voice rests or holds.</summary>
    Fill,

    /// <summary>Played as it stands: the bar belongs to the piano.</summary>
    Fixed,
}

/// <summary>One onset of the right hand beside a voice.</summary>
/// <param name="Until">When it is released at the latest.</param>
internal sealed record CompOnset(int Tick, CompKind Kind, int Until)
{
    /// <summary>The note itself, where it is fixed.</summary>
    public RightNote? Note { get; init; }

    /// <summary>The last of its fill.</summary>
    public bool EndsFill { get; init; }
}
