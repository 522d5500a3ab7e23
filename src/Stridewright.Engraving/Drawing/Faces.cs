using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>The text faces: a serif in four styles, and one face for the signs that it lacks.</summary>
internal sealed class Faces
{
    private static readonly Lazy<Faces> Loaded = new(() => new Faces());

    private readonly SKFont[] _serif =
    [
        Open("SourceSerif4-Regular.ttf"),
        Open("SourceSerif4-Bold.ttf"),
        Open("SourceSerif4-Italic.ttf"),
        Open("SourceSerif4-BoldItalic.ttf"),
    ];

    private readonly SKFont _signs = Open("NotoSansMath-Regular.ttf");

    private Faces() { }

    /// <summary>Loaded once and kept: faces are immutable and may be used from any thread.</summary>
    public static Faces Shared => Loaded.Value;

    /// <summary>The face that has this character; null when none has.</summary>
    public SKTypeface? For(int character, bool bold, bool italic)
    {
        var serif = _serif[(bold ? 1 : 0) + (italic ? 2 : 0)];
        return serif.ContainsGlyph(character) ? serif.Typeface
            : _signs.ContainsGlyph(character) ? _signs.Typeface
            : null;
    }

    private static SKFont Open(string name)
    {
        var path = Assets.PathOf(name);
        var face =
            SKTypeface.FromFile(path) ?? throw new FileNotFoundException(EngravingMessages.AssetMissing(path), path);
        return new SKFont(face);
    }
}
