using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Trials;

// trials calibrate SHARED [ROUNDS]    fit the rhythm prices
// trials textures SHARED              fit the texture prices
// trials measure SHARED               rhythm figures of the held-back tunes with the prices in the source
// trials corpus SHARED OUT [--levels 1,2,..] [--spans 185,..] [--every N]   set the corpus and audit every score
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
    case "measure":
        Calibration.Measure([.. held.Select(t => t.Tune)], RagWeights.Standard);
        break;
    default:
        return CorpusRun.Run(tunes, args);
}
return 0;
