using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

// dotnet run -c Release --project bench/Stridewright.Bench -- --filter '*'    all; --job Dry for a smoke run
var job = (args.Contains("Dry") ? Job.Dry : Job.ShortRun).WithToolchain(InProcessEmitToolchain.Instance);
var config = ManualConfig.Create(DefaultConfig.Instance).AddJob(job);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run([.. args.Where(a => a is not ("--job" or "Dry"))], config);
