using System.Globalization;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// The text of player files (docs/player-file.md): a first line with the version, the name, the hands with a line for each
/// thing said of them, and notes, which go to the end.
/// </summary>
public static class PlayerText
{
    /// <summary>What every file begins with, before its version.</summary>
    public const string FirstWords = "stridewright player";

    /// <summary>Version that is written and read.</summary>
    public const int Version = 1;

    /// <summary>Ending of the files' names.</summary>
    public const string Ending = ".player";

    /// <summary>Characters: far more than anybody notes of a player.</summary>
    public const int MostCharacters = 100_000;

    private const string Indent = "  ";

    /// <summary>The file's text, lines ending in <c>\n</c>.</summary>
    /// <exception cref="ArgumentException">The name is none.</exception>
    public static string Write(Player player)
    {
        ArgumentNullException.ThrowIfNull(player);
        if (!Player.IsName(player.Name))
        {
            throw new ArgumentException(PlayerMessages.NoName(Player.LongestName), nameof(player));
        }
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{FirstWords} {Version}\nname {player.Name}\nhands\n");
        foreach (var word in HandsText.Words)
        {
            if (word.Value(player.Hands) is { } value)
            {
                text.Append(Indent).Append(word.Word).Append(value.Length > 0 ? " " : "").Append(value).Append('\n');
            }
        }
        var notes = player.Notes.ReplaceLineEndings("\n").TrimEnd();
        if (notes.Length > 0)
        {
            text.Append("notes\n");
            foreach (var line in notes.Split('\n'))
            {
                text.Append(line.Length > 0 ? Indent : "").Append(line).Append('\n');
            }
        }
        return text.ToString();
    }

    /// <summary>Reads a file's text. The value is null, with at least one error, when any of it cannot be read; each error
    /// names its line and column.</summary>
    public static Reading<Player> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var faults = new TextFaults();
        var player = Read(text, faults);
        return new(faults.Any ? null : player, faults.ToValueList());
    }

    private static Player? Read(string text, TextFaults faults)
    {
        if (text.Length > MostCharacters)
        {
            faults.Add(new(1, 1, ""), PlayerMessages.TooLong(MostCharacters));
            return null;
        }
        var lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        var first = TextLine.Of(lines[0], 1);
        if (first.VersionBehind(FirstWords) is not Version)
        {
            faults.Add(first, PlayerMessages.NotOurs(first, Version));
            return null;
        }
        string? name = null;
        List<TextLine>? hands = null;
        var notesFrom = lines.Length;
        for (var i = 1; i < lines.Length && notesFrom == lines.Length; i++)
        {
            var line = TextLine.Of(lines[i], i + 1);
            var (word, behind) = line.Split();
            if (line.Text.Length == 0)
            {
                continue;
            }
            switch (line.Column == 1 ? word : "")
            {
                case "name":
                    CheckName(behind, name, line, faults);
                    name = behind.Text;
                    break;
                case "hands" when behind.Text.Length == 0:
                    if (hands is not null)
                    {
                        faults.Add(line, PlayerMessages.Twice(word));
                    }
                    hands ??= [];
                    break;
                case "notes" when behind.Text.Length == 0:
                    notesFrom = i + 1;
                    break;
                default:
                    if (line.Column == 1 || hands is null)
                    {
                        faults.Add(line, PlayerMessages.OutsideSection);
                    }
                    hands?.Add(line);
                    break;
            }
        }
        if (name is null)
        {
            faults.Add(new(lines.Length, 1, ""), PlayerMessages.NoName(Player.LongestName));
        }
        var notes = lines.Skip(notesFrom).Select(l => l.StartsWith(Indent, StringComparison.Ordinal) ? l[2..] : l);
        return new Player(name ?? "", ReadHands(hands ?? [], faults)) { Notes = string.Join('\n', notes).TrimEnd() };
    }

    private static void CheckName(TextLine name, string? before, TextLine line, TextFaults faults)
    {
        if (before is not null)
        {
            faults.Add(line, PlayerMessages.Twice("name"));
        }
        else if (!Player.IsName(name.Text))
        {
            faults.Add(line, PlayerMessages.NoName(Player.LongestName));
        }
    }

    private static PlayerHands ReadHands(List<TextLine> lines, TextFaults faults)
    {
        var given = new Dictionary<string, (TextLine Line, TextLine Value)>(StringComparer.Ordinal);
        foreach (var line in lines)
        {
            var (word, value) = line.Split();
            if (!HandsText.Words.Any(w => w.Word == word))
            {
                faults.Add(line, PlayerMessages.NoWord(word, string.Join(", ", HandsText.Words.Select(w => w.Word))));
            }
            else if (!given.TryAdd(word, (line, value)))
            {
                faults.Add(line, PlayerMessages.Twice(word));
            }
        }
        var hands = new PlayerHands();
        foreach (var word in HandsText.Words.Where(w => given.ContainsKey(w.Word)))
        {
            var (line, value) = given[word.Word];
            var (read, problem) = word.Read(hands, value.Text);
            if (read is null)
            {
                faults.Add(value.Text.Length > 0 ? value : line, problem);
            }
            hands = read ?? hands;
        }
        return hands;
    }
}
