using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>The text faces: a serif in four styles, and one face for the signs that it lacks.</summary>
internal sealed class Faces
{
    private static readonly Lazy<Faces> Loaded = new(() => new Faces());

    // The signs are drawn smaller than the serif's capitals, the flat much smaller.
    private const float SignScale = 1.15f;
    private const float FlatScale = 1.5f;

    private readonly SKFont[] _serif =
    [
        Open("SourceSerif4-Regular.ttf"),
        Open("SourceSerif4-Bold.ttf"),
        Open("SourceSerif4-Italic.ttf"),
        Open("SourceSerif4-BoldItalic.ttf"),
    ];

    private readonly SKFont _signs = Open("NotoSansSymbols-Regular.ttf");

    private Faces() { }

    /// <summary>Loaded once and kept: faces are immutable and may be used from any thread.</summary>
    public static Faces Shared => Loaded.Value;

    /// <summary>The face that has this character, and how much larger it is to be set; null when none has it.</summary>
    public (SKTypeface Face, float Scale)? For(int character, bool bold, bool italic)
    {
        var serif = _serif[(bold ? 1 : 0) + (italic ? 2 : 0)];
        return serif.ContainsGlyph(character) ? (serif.Typeface, 1)
            : _signs.ContainsGlyph(character) ? (_signs.Typeface, character == '♭' ? FlatScale : SignScale)
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
