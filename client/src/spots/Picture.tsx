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
    const music = inner.querySelector<SVGGElement>("g.system");
    const box = music?.getBBox();
    if (!box || box.width === 0) return;
    const margin = music!.closest<SVGGElement>("g.page-margin")?.transform.baseVal.consolidate()?.matrix;
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
