using Stridewright.Workbench.Practising;

namespace Stridewright.Cli;

/// <summary>What the command line says about progress.</summary>
internal static partial class CliMessages
{
    public const string ProgressHelp = """
        Tells how players have come on, by the takes that are kept on a shelf: for each piece the tempo reached, how clean
        and how steady it was from week to week, and what is due. With --player one player, else all of them.

        Clean is a take with at least 98 of 100 notes right, extra ones counted against it, over nine tenths of its bars. The
        tempo reached is that of the fastest clean take of the whole piece. What was practised is due a day later, after
        two clean days in a row two days later, then four, and so on up to four weeks.

        Examples:
          stridewright progress --player Ada
          stridewright progress --data lessons --csv progress.csv

        Exit codes: 0 told; 2 nothing told or written.
        """;

    public const string ProgressPlayerHelp = "Name of a player on the shelf [default: all players]";
    public const string ProgressDayHelp = "Day for which to tell what is due, such as 2026-03-14 [default: today]";
    public const string ProgressCsvHelp =
        "Write a table too, a line for each player, piece and week (commas, UTF-8); cells that begin as formulas do are quoted";
    public const string ForgetHelp = """
        Throws a player away from a shelf, with all takes and all versions, for good. Backups keep theirs.
        """;
    public const string ForgetNameHelp = "Name of a player on the shelf";
    public const string ForgetYesHelp = "Do it; without this nothing happens but that it is told what would go";
    public const string NoProgress = "There is no player and no take on this shelf yet.";
    public const string Nobody = "nobody in particular";

    public static string NoDay(string day) => $"'{day}' is no day: say it as in 2026-03-14";

    public static string NobodyCalled(string name) =>
        $"no player on this shelf is called '{name}': progress without --player lists all of them";

    public static string WouldForget(int takes) =>
        FormattableString.Invariant(
            $"this throws the player and {takes} take{(takes == 1 ? "" : "s")} away for good, which cannot be undone: say --yes to do it"
        );

    public static string PlayerLine(PlayerProgress player) =>
        Text(
            $"{(player.Name.Length > 0 ? player.Name : Nobody)}: {player.Takes} take{(player.Takes == 1 ? "" : "s")} in the last seven days"
        );

    public static string PieceLine(PieceReport piece) =>
        Text($"{piece.Title}: {piece.Takes} take{(piece.Takes == 1 ? "" : "s")}, {piece.First:O} to {piece.Last:O}; ")
        + (
            piece.TempoReached is { } tempo
                ? Text($"reached {tempo:0} quarters a minute")
                    + (piece.AskedTempo is { } asked ? Text($" of {asked:0}") : "")
                : "not clean as a whole so far"
        );

    public static string WeekLine(WeekReport week) =>
        Text(
            $"from {week.Week:O}: {week.Takes} on {week.Days} day{(week.Days == 1 ? "" : "s")}, {week.Cleanness:0 %} right"
        )
        + (week.TempoReached is { } tempo ? Text($", {tempo:0} a minute") : "")
        + (week.Unevenness is { } uneven ? Text($", left hand within {100 * uneven:0.0} %") : "");
}
