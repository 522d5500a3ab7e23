import { useEffect, useRef } from "react";
import type { SheetBar } from "../spots/spotApi";

/** A click on a bar of the score chooses it, a click with Shift the bars from there to here.
 * @param onRange Printed numbers such as 5-8. */
export function useChosenBars(bars: SheetBar[] | undefined, onRange: (range: string) => void) {
  const first = useRef<number>(undefined);
  const latest = useRef({ bars, onRange });
  latest.current = { bars, onRange };
  useEffect(() => {
    const choose = (event: MouseEvent) => {
      const target = event.target as Element;
      if (!target.closest(".score")) return;
      const measure = [...document.querySelectorAll(".score g.measure")]
        .map((bar) => ({ id: bar.id, away: awayFrom(bar.getBoundingClientRect(), event) }))
        .reduce((nearest, bar) => (bar.away < nearest.away ? bar : nearest), { id: "", away: 1 });
      const all = latest.current.bars ?? [];
      const at = all.findIndex((bar) => bar.id === measure.id);
      if (at < 0) return;
      const from = event.shiftKey && first.current !== undefined ? first.current : at;
      first.current = from;
      const [low, high] = [all[Math.min(from, at)]!, all[Math.max(from, at)]!];
      latest.current.onRange(low === high ? low.number : `${low.number}-${high.number}`);
    };
    document.addEventListener("click", choose);
    return () => document.removeEventListener("click", choose);
  }, []);
}

// How far from the middle of a bar, in halves of its size: what stands out of bars, such as ties, makes them overlap.
const awayFrom = (box: DOMRect, { clientX, clientY }: MouseEvent) =>
  Math.max(Math.abs(clientX - (box.left + box.right) / 2) / (box.width / 2), Math.abs(clientY - (box.top + box.bottom) / 2) / (box.height / 2));
