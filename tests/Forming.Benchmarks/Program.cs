using BenchmarkDotNet.Running;
using Forming.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(PlanBenchmarks).Assembly).Run(args);
