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
      const measure = [...document.querySelectorAll(".score g.measure")].find((bar) => isIn(bar.getBoundingClientRect(), event));
      const all = latest.current.bars ?? [];
      const at = all.findIndex((bar) => bar.id === measure?.id);
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

// Between the notes too.
const isIn = (box: DOMRect, { clientX, clientY }: MouseEvent) =>
  clientX >= box.left && clientX <= box.right && clientY >= box.top && clientY <= box.bottom;
