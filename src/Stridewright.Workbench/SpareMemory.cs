using System.Runtime;
using System.Runtime.InteropServices;

namespace Stridewright.Workbench;

/// <summary>Memory that the program has and does not use.</summary>
internal static partial class SpareMemory
{
    /// <summary>Gives it back to the system. What runs meanwhile is held up for a few tenths of a second.</summary>
    public static void GiveBack()
    {
        GCSettings.LargeObjectHeapCompactionMode = GCLargeObjectHeapCompactionMode.CompactOnce;
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        if (OperatingSystem.IsLinux())
        {
            try
            {
                _ = Trim(0);
            }
            catch (EntryPointNotFoundException)
            {
                // Not every C library can.
            }
            catch (DllNotFoundException)
            {
                // Nor has every system this one.
            }
        }
    }

    // The engraver and the readers take theirs outside the collector's heap, on many threads.
    [LibraryImport("libc", EntryPoint = "malloc_trim")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Trim(nuint pad);
}
