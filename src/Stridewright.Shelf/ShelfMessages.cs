using System.Globalization;

namespace Stridewright.Shelf;

/// <summary>Every sentence this project says to a person.</summary>
internal static class ShelfMessages
{
    public const string NoSuchDocument = "this is no longer on the shelf: look for it in the list";
    public const string NoOwnFolder = "no folder for your own data is known here: name one with --data";
    public const string StillStands = "only what was put aside can be thrown away: delete it first";
    public const string NotAZip = "this is no backup of a shelf: choose the zip that the shelf gave you";
    public const string WrongInside =
        "this zip holds something else than a shelf: choose the zip that the shelf gave you";
    public const string BrokenBackup = "this backup is damaged: choose another one; the shelf is as it was";
    public const string ForeignTables =
        "this backup holds tables that are not a shelf's: choose another one; the shelf is as it was";
    public const string Closed = "the shelf was closed: start the program again";

    public const string DiskFull = "the disk is full: make room; what was kept before is safe";

    public static string Unreadable(string file) =>
        $"{file} cannot be read or written just now: look at the disk and its permissions; what was kept before is safe";

    public static string NoSuchVersion(int number) =>
        string.Create(CultureInfo.InvariantCulture, $"there is no version {number} of it: look at its versions");

    public static string InUse(string folder) =>
        $"the shelf in {folder} is in use by another start of the program: use that one, or name another folder with --data";

    public static string NotAFolder(string folder) =>
        $"{folder} cannot hold the shelf, since it is a file: name a folder with --data";

    public static string OtherThings(string folder) =>
        $"{folder} holds other things than a shelf: name an empty or a new folder with --data";

    public static string NotWritable(string folder, string why) =>
        $"the shelf cannot be kept in {folder} ({why}): name another folder with --data";

    public static string Newer(string file) =>
        $"{file} was written by a later version of this program: use that one; the file was left as it is";

    public static string Broken(string file) =>
        $"{file} is damaged or no shelf: it was left as it is. Move it away, and put the last backup back from an empty shelf";

    public static string TooLarge(long bytes) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"what is in this zip is larger than {bytes / (1024 * 1024)} MiB: that is no backup of a shelf"
        );

    public static string BadTitle(int most) =>
        string.Create(CultureInfo.InvariantCulture, $"a title is one line of 1 to {most} characters");

    public static string BadTag(int most, int tags) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"a tag is one line of 1 to {most} characters, and a document has at most {tags}"
        );

    public static string TextTooLong(int most) =>
        string.Create(CultureInfo.InvariantCulture, $"a text on the shelf has at most {most} characters");
}
