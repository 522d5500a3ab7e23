using System.Runtime;
using System.Runtime.InteropServices;

namespace Stridewright.Workbench;

/// <summary>Memory that the program has and does not use.</summary>
internal static partial class SpareMemory
{
    private const int Least = 19;

    /// <summary>Gives it back to the system, after all that others want of the processor: the browser may be playing. What
    /// runs in the program meanwhile is held up for a few tenths of a second.</summary>
    public static void GiveBack()
    {
        // On Linux a thread has a priority of its own, and this one ends with the work.
        var thread = new Thread(() =>
        {
            if (OperatingSystem.IsLinux())
            {
                _ = Nice(Least);
            }
            Collect();
        })
        {
            IsBackground = true,
        };
        thread.Start();
        thread.Join();
    }

    private static void Collect()
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

    [LibraryImport("libc", EntryPoint = "nice")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Nice(int more);
}
