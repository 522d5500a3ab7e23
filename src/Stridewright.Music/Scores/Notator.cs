namespace Stridewright.Music;

/// <summary>Spells a draft: note values, ties, rests and beams that let the beat be read.</summary>
public static class Notator
{
    public static Score Write(Draft draft) => throw new NotSupportedException(draft.Title);
}
