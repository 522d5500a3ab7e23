import { useRef, useState } from "react";
import type { Brought, SettingMade, Wishes } from "./api";

/** How the desk stands: the brief, and the tune with the bars that are kept of it. */
export interface Step {
  wishes: Wishes;
  /** Of the tune that was brought as the count-th one; the setting is what came of the last work on a bar, the tune is
   * there where it was corrected. */
  kept?: { count: number; tunes: string; made?: SettingMade; wishes: Wishes; tune?: Brought["tunes"][number] };
}

/** Every step can be taken back, and done again. */
export function useSteps(first: Step) {
  const [{ past, now, future }, setSteps] = useState<{ past: Step[]; now: Step; future: Step[] }>({ past: [], now: first, future: [] });
  const latest = useRef(now);
  latest.current = now;
  return {
    now,
    /** False once something else was done: what was begun at a step and is ready only then has no place on the desk. */
    isNow: (step: Step) => latest.current === step,
    put: (next: Step) => setSteps((s) => ({ past: [...s.past, s.now], now: next, future: [] })),
    /** Another beginning: nothing is taken back beyond it. */
    begin: (next: Step) => setSteps({ past: [], now: next, future: [] }),
    back: past.length > 0 ? () => setSteps((s) => ({ past: s.past.slice(0, -1), now: s.past.at(-1)!, future: [s.now, ...s.future] })) : undefined,
    forward: future.length > 0 ? () => setSteps((s) => ({ past: [...s.past, s.now], now: s.future[0]!, future: s.future.slice(1) })) : undefined,
  };
}
