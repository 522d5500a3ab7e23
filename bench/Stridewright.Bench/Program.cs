using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Stridewright.Bench.Paired;

// dotnet run -c Release --project bench/Stridewright.Bench -- --filter '*'
// --smoke runs each benchmark once: it shows that they work and measures nothing.
// paired growth [STEP]|reading|hosts|form compares inside each round, for machines that others use as well.
if (args is ["paired", ..])
{
    Action run = args is [_, var which, ..]
        ? which switch
        {
            "growth" => () => Growth.Run(args is [_, _, var only] ? only : ""),
            "reading" => Reading.Run,
            "hosts" => Hosts.Run,
            "form" => WithForm.Run,
            _ => throw new ArgumentException($"paired growth, reading, hosts or form, not {which}"),
        }
        : (() => Growth.Run("")) + (Action)Reading.Run + Hosts.Run + WithForm.Run;
    run();
    return 0;
}
const string smoke = "--smoke";
var job = args.Contains(smoke) ? Job.Dry : Job.Default.WithWarmupCount(8).WithIterationCount(15);
var config = ManualConfig.Create(DefaultConfig.Instance).AddJob(job.WithToolchain(InProcessEmitToolchain.Instance));
var others = args.Where(a => a != smoke).DefaultIfEmpty("--filter=*").ToArray();
var summaries = BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(others, config).ToList();
return summaries.Count > 0 && summaries.All(s => s.Reports.All(r => r.Success)) ? 0 : 1;
