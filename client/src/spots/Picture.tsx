import { useEffect, useRef } from "react";
import { engraved } from "../engraved";

const ROOM = 300; // of the engraver’s units round the music

/** A few bars by themselves, as large as they are. */
export function Picture({ svg, label }: { svg: string; label: string }) {
  const holder = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const picture = engraved(svg);
    if (!picture || !holder.current) return;
    // Ids belong to the pages of the score.
    for (const element of picture.querySelectorAll("[id]")) {
      if (!element.closest("defs")) element.removeAttribute("id");
    }
    holder.current.replaceChildren(picture);
    const inner = picture.querySelector<SVGSVGElement>("svg.definition-scale") ?? picture;
    const systems = [...inner.querySelectorAll<SVGGElement>("g.system")];
    const box = boxOf(systems.map((system) => system.getBBox()));
    if (!(box.width > 0)) return;
    const margin = systems[0]!.closest<SVGGElement>("g.page-margin")?.transform.baseVal.consolidate()?.matrix;
    const width = box.width + 2 * ROOM;
    const height = box.height + 2 * ROOM;
    inner.setAttribute("viewBox", `${box.x + (margin?.e ?? 0) - ROOM} ${box.y + (margin?.f ?? 0) - ROOM} ${width} ${height}`);
    picture.removeAttribute("viewBox");
    picture.style.aspectRatio = `${width} / ${height}`;
    picture.style.width = `min(100%, ${width / 430}rem)`;
    picture.removeAttribute("width");
    picture.removeAttribute("height");
  }, [svg]);
  return <div ref={holder} role="img" aria-label={label} className="page excerpt" />;
}

// What the browser measures in a picture has no other sides than these.
function boxOf(parts: Pick<DOMRect, "x" | "y" | "width" | "height">[]) {
  const [x, y] = [Math.min(...parts.map((p) => p.x)), Math.min(...parts.map((p) => p.y))];
  const [right, bottom] = [Math.max(...parts.map((p) => p.x + p.width)), Math.max(...parts.map((p) => p.y + p.height))];
  return { x, y, width: right - x, height: bottom - y };
}
