using Stridewright.Cli;
using Stridewright.Workbench;

using var interruption = new Interruption();
var app = new CommandLineApp(UseCases.Open, Console.Out, Console.Error)
{
    SomebodyLooksOn = !Console.IsErrorRedirected && !Console.IsOutputRedirected,
};
return app.Run(args, interruption.Token);
