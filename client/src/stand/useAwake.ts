import { useEffect } from "react";

/** Keeps the screen from going dark while it is used; where the browser cannot, nothing is said. */
export function useAwake() {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let isOver = false;
    // The browser lets go of it whenever the page is hidden.
    const take = async () => {
      if (document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
      try {
        const taken = await navigator.wakeLock.request("screen");
        if (isOver) void taken.release();
        else lock = taken;
      } catch {
        // Refused, on a low battery say.
      }
    };
    void take();
    document.addEventListener("visibilitychange", take);
    return () => {
      isOver = true;
      document.removeEventListener("visibilitychange", take);
      void lock?.release().catch(() => undefined);
    };
  }, []);
}
