namespace Stridewright.Workbench;

/// <summary>Cautions that every host says in the same words.</summary>
public static class WorkbenchCautions
{
    public const string Copyright =
        "An arrangement of a work in copyright needs its owner's permission where the law says so.";
}
