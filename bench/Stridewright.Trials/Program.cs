using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Trials;

// trials calibrate SHARED [ROUNDS]    fit the rhythm prices
// trials textures SHARED              fit the texture prices
// trials measure SHARED               rhythm figures of the held-back tunes with the prices in the source
// trials corpus SHARED OUT [--levels 1,2,..] [--spans 185,..] [--every N] [--held] [--form LINE]
//     [--seconds N] [--harmony WORD] [--play WORD,..: each setting the next]   set the corpus, or the tunes held back from calibration, and audit every score
// trials nesting SHARED OUT [--span MM] [--every N]   how far levels nest, and whether effort rises
// trials effort SHARED                whether effort rises from level to level, and what its parts do
// trials harmony SHARED [--each]      harmony found without the printed chords, against them
// trials finger SHARED [--levels 1,2,..] [--spans 185,..] [--every N]   finger every setting of the corpus
// trials split SHARED                 which tunes are which
// trials fuzz SHARED [--minutes N] [--seed N] [--format abc|musicxml] [--out FOLDER]   damage files and read them
if (args[0] == "fuzz")
{
    return FuzzRun.Run(args);
}
var tunes = CorpusTunes.Read(args[1]);
var (fit, held) = CorpusTunes.Split(tunes);
switch (args[0])
{
    case "calibrate":
        var rounds = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 40;
        Calibration.Run([.. fit.Select(t => t.Tune)], [.. held.Select(t => t.Tune)], rounds);
        break;
    case "textures":
        Calibration.Textures([.. fit.Select(t => t.Tune)], [.. held.Select(t => t.Tune)], 24);
        break;
    case "split":
        Console.WriteLine("calibrated on: " + string.Join(", ", fit.Select(t => t.Name)));
        Console.WriteLine("held back: " + string.Join(", ", held.Select(t => t.Name)));
        break;
    case "measure":
        Calibration.Measure([.. held.Select(t => t.Tune)], RagWeights.Standard);
        break;
    case "harmony":
        return HarmonyRun.Run(tunes, args);
    case "effort":
        return EffortRun.Run(tunes);
    case "finger":
        return FingerRun.Run(tunes, args);
    case "nesting":
        return Nesting.Run(tunes, args);
    default:
        return CorpusRun.Run(args.Contains("--held") ? held : tunes, args);
}
return 0;
