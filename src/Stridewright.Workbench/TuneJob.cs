using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>One tune of a file, with what its reader remarked.</summary>
/// <param name="Number">Place in its book; null when it is alone in its file.</param>
/// <param name="WantedName">Name of its outputs, without ending, unless another has it.</param>
internal sealed record TuneJob(InputFile Input, Tune Tune, int? Number, string WantedName, ValueList<Remark> Remarks)
{
    /// <summary>Those of the arrangement file that it comes from.</summary>
    public ValueList<FigureText> Figures { get; init; } = [];

    /// <summary>Its setting, where it was made with others; null: it is made.</summary>
    public ArrangeResult? Result { get; init; }

    /// <summary>What it adds to the one before, or how it differs from the others; null: it stands alone.</summary>
    public string? Adds { get; init; }

    /// <summary>Such as <c>tune 3, The Ferry Bell</c>; null when the file says it all.</summary>
    public string? Label => Number is { } n ? FormattableString.Invariant($"tune {n}, {Tune.Title}") : null;

    /// <summary>Remarks, with the name of its outputs where another had the wanted one.</summary>
    public ValueList<Remark> Named(string name, ValueList<Remark> remarks) =>
        name == WantedName
            ? remarks
            : [new Remark("note", "", WorkbenchMessages.NameTaken(WantedName, name)), .. remarks];
}
