using System.Globalization;

namespace Stridewright.Web;

/// <summary>Every sentence this project says to a person.</summary>
internal static class WebMessages
{
    public const string ForeignHost = "this address is not served here: open the one that the program printed";
    public const string ForeignOrigin = "another page asked for this: open the address that the program printed";
    public const string NoToken = "the page was not opened from the address that the program printed: open that one";
    public const string NotThere = "there is nothing here: go back to the page";
    public const string NoTunes = "the tune is no longer at hand: load the page again, or bring it anew";
    public const string NoBar = "this setting has no such bar, or the bar no such way";

    public const string NoSheet = "the setting is no longer at hand: ask for it again";
    public const string NoFigure = "this setting has no figure of that name: make one of its bars first";
    public const string NoHandout = "the hand-out is no longer at hand: ask for it again";
    public const string NotAHandoutFormat = "a hand-out is taken away as pdf, svg or png";
    public const string NoLeapTest = "the leap test is one of a hand, right or left, as midi or svg";

    public const string NoText = "there is no text: type a tune in ABC, or chords such as F | D7 | G7 C7 | F";
    public const string NotPaper = "the paper is a4 or letter";
    public const string NotAFormat =
        "it can be taken away as pdf, large-print, reasons, right-hand, left-hand, musicxml, mxl, midi, wav, svg, png, "
        + "arrangement or zip";

    public const string TakeAwaySummary =
        "A setting as a file: pdf, large-print, reasons, right-hand or left-hand (all PDF), musicxml, mxl, midi, wav, svg "
        + "or png (one page), arrangement, or all of them as zip.";
    public const string BadRequest = "the request could not be read: mend it, or load the page again";
    public const string Cancelled = "it was cancelled";
    public const string TooLong = "it took too long: try a shorter tune";

    public static string TooLarge(long bytes) =>
        bytes >= 1024 * 1024
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"it is larger than {bytes / (1024 * 1024)} MiB: bring less at once"
            )
            : string.Create(CultureInfo.InvariantCulture, $"it is larger than {bytes / 1024} KiB: bring less at once");

    public static string NotJson(string path, long line) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the request is no JSON of ours at {path}, line {line}: see the contract"
        );

    public static string NoSuchTune(int number, int count) =>
        string.Create(CultureInfo.InvariantCulture, $"there is no tune {number}: there are {count}");

    public static string NoSuchPage(int number, int count) =>
        string.Create(CultureInfo.InvariantCulture, $"there is no page {number}: there are {count}");

    public static string Internal(string kind) =>
        $"something went wrong inside ({kind}): please report it with this tune";
}
