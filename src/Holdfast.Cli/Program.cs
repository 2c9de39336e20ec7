using Holdfast.Cli;

return CommandLine.Run(args, Door.OfThisProcess());
