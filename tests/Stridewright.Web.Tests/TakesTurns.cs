using Stridewright.Testing;

[assembly: AssemblyFixture(typeof(Turn))]
