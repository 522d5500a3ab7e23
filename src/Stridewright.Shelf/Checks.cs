using System.Text;
using Stridewright.Music;

namespace Stridewright.Shelf;

/// <summary>Refuses what the shelf cannot keep.</summary>
internal static class Checks
{
    /// <exception cref="ShelfException">Its title or text is not as <see cref="DocumentLimits"/> say.</exception>
    public static Content Of(Content content) =>
        content.Text.Length <= DocumentLimits.Text
            ? content with
            {
                Title = Title(content.Title),
                Text = Whole(content.Text),
            }
            : throw new ShelfException(ShelfFault.Refused, ShelfMessages.TextTooLong(DocumentLimits.Text));

    public static string Title(string text) =>
        IsLine(text, DocumentLimits.Title)
            ? Whole(text)
            : throw new ShelfException(ShelfFault.Refused, ShelfMessages.BadTitle(DocumentLimits.Title));

    public static ValueList<string> Tags(ValueList<string> tags) =>
        tags.Count <= DocumentLimits.Tags && tags.All(t => IsLine(t, DocumentLimits.Tag))
            ? tags.Select(Whole).ToValueList()
            : throw new ShelfException(
                ShelfFault.Refused,
                ShelfMessages.BadTag(DocumentLimits.Tag, DocumentLimits.Tags)
            );

    // A half of a pair of code units is no letter: it becomes the mark for that.
    private static string Whole(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text));

    private static bool IsLine(string text, int most) =>
        !string.IsNullOrWhiteSpace(text) && text.Length <= most && !text.Any(char.IsControl);
}
