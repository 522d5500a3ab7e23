import { useLayoutEffect, useState } from "react";
import { watchLayout } from "../layout";
import { sentences } from "../sentences";
import type { SheetBar } from "./spotApi";

const OF_STAVES = 0.16; // of the staves’ height that words under them take, where the music is small

interface Mark {
  id: string;
  left: number;
  top: number;
  width: number;
  height: number;
  hard: number;
  kept: string[];
}

/** Pencil marks over the pages: a bracket beside hard bars, heavier where they are harder, and a line under kept ones, with
 * words where such a line begins. */
export function Marks({ bars, chosen, layer }: { bars: SheetBar[]; chosen: string | undefined; layer: HTMLElement | null }) {
  const [marks, setMarks] = useState<Mark[]>([]);
  useLayoutEffect(() => {
    if (!layer) return;
    const measure = () => {
      const origin = layer.getBoundingClientRect();
      const found = bars
        .filter((bar) => bar.hard > 0 || bar.kept.length > 0 || bar.id === chosen)
        .flatMap((bar) => {
          const drawn = document.getElementById(bar.id);
          if (!drawn || !layer.contains(drawn)) return [];
          const box = staves(drawn);
          const { id, hard, kept } = bar;
          return [{ id, hard, kept, left: box.left - origin.left, top: box.top - origin.top, width: box.width, height: box.height }];
        });
      setMarks((before) => (JSON.stringify(before) === JSON.stringify(found) ? before : found));
    };
    measure();
    return watchLayout(layer, measure);
  }, [bars, chosen, layer]);
  return (
    <div className="marks" aria-hidden="true">
      {marks.map(({ id, left, top, width, height, hard, kept }, i) => (
        <div
          key={id}
          className={`mark${id === chosen ? " chosen" : ""}`}
          style={{ transform: `translate(${left}px, ${top}px)`, width, height }}
          data-hard={hard || undefined}
        >
          {hard > 0 && <span className="bracket" />}
          {kept.length > 0 && <span className="kept-mark" />}
          {kept.length > 0 && !goesOn(marks[i - 1], marks[i]!) && (
            <span className="kept-words" style={{ width: runOf(marks, i), fontSize: `min(0.85rem, ${height * OF_STAVES}px)` }}>
              {sentences.spots.keptMark(kept)}
            </span>
          )}
        </div>
      ))}
    </div>
  );
}

// Whether a bar stands right after another one on its system and is kept as that is.
const goesOn = (before: Mark | undefined, mark: Mark): boolean =>
  before?.top === mark.top && Math.abs(before.left + before.width - mark.left) < 2 && before.kept.join() === mark.kept.join();

// Width of the bars from one on that are kept as it is.
function runOf(marks: Mark[], first: number): number {
  let width = marks[first]!.width;
  for (let i = first + 1; i < marks.length && goesOn(marks[i - 1], marks[i]!); i++) width += marks[i]!.width;
  return width;
}

// From the highest to the lowest line of its staves: what stands above and below would lie under the marks.
function staves(bar: Element): DOMRect {
  const lines = [...bar.querySelectorAll(":scope > g.staff > path")].map((line) => line.getBoundingClientRect());
  if (lines.length === 0) return bar.getBoundingClientRect();
  const [left, top] = [Math.min(...lines.map((l) => l.left)), Math.min(...lines.map((l) => l.top))];
  const [right, bottom] = [Math.max(...lines.map((l) => l.right)), Math.max(...lines.map((l) => l.bottom))];
  return new DOMRect(left, top, right - left, bottom - top);
}
