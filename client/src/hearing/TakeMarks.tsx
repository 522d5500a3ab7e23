import { useLayoutEffect, useState } from "react";
import { watchLayout } from "../layout";
import type { SeenMark } from "./takeApi";

interface Put {
  kind: string;
  x: number;
  y: number;
  scale: number;
}

const UNIT = 7; // half the height of a shape at scale 1, over that of a note head

/** What was heard, pencilled over the pages: each mark a shape of its own at its note. */
export function TakeMarks({ marks, layer }: { marks: SeenMark[]; layer: HTMLElement | null }) {
  const [puts, setPuts] = useState<Put[]>([]);
  useLayoutEffect(() => {
    if (!layer) return;
    const measure = () => {
      const origin = layer.getBoundingClientRect();
      const found = marks.flatMap((mark): Put[] => {
        const drawn = document.getElementById(mark.note ?? mark.bar);
        if (!drawn || !layer.contains(drawn)) return [];
        const head = mark.note ? (drawn.querySelector(".notehead") ?? drawn) : (drawn.querySelector("g.staff > path") ?? drawn);
        const box = head.getBoundingClientRect();
        const size = mark.note ? box.height : 8;
        const scale = Math.max(0.6, size / UNIT / 1.3);
        const [x, y] = mark.note ? [box.left + box.width / 2, box.top + box.height / 2] : [box.left + 12, box.top - 8];
        return [{ kind: mark.kind, x: x - origin.left, y: y - origin.top, scale }];
      });
      setPuts((before) => (JSON.stringify(before) === JSON.stringify(found) ? before : found));
    };
    measure();
    return watchLayout(layer, measure);
  }, [marks, layer]);
  return (
    <svg className="take-marks" aria-hidden="true">
      {puts.map(({ kind, x, y, scale }, i) => (
        <g key={i} data-kind={kind} transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${scale.toFixed(2)})`}>
          <Shape kind={kind} />
        </g>
      ))}
    </svg>
  );
}

/** The shape of a mark about the middle of its note. */
export function Shape({ kind }: { kind: string }) {
  switch (kind) {
    case "missing":
      return <ellipse rx="9" ry="7.5" transform="rotate(-18)" />;
    case "wrong":
      return <path d="M-7-7 7 7M7-7-7 7" />;
    case "extra":
      return <path d="M-6 0H6M0-6V6" />;
    case "early":
      return <path d="M8 0H-8M-3-5-8 0-3 5" transform="translate(0 -11)" />;
    case "late":
      return <path d="M-8 0H8M3-5 8 0 3 5" transform="translate(0 -11)" />;
    case "hesitation":
      return <path d="M-12 8-8-8M-6 8-2-8" transform="translate(-6 0)" />;
    default:
      return <path d="M-11-8c3 2-3 4 0 6s-3 4 0 6-3 4 0 6" />;
  }
}
