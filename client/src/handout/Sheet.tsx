import { useEffect, useRef } from "react";
import { engraved } from "../engraved";

/** A page as it will be printed: black on white, whatever the light. */
export function Sheet({ svg, label, isWorking }: { svg: string; label: string; isWorking: boolean }) {
  const holder = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const picture = engraved(svg);
    if (!picture) return;
    // Ids belong to the pages of the score.
    for (const element of picture.querySelectorAll("[id]")) {
      if (!element.closest("defs")) element.removeAttribute("id");
    }
    picture.removeAttribute("width");
    picture.removeAttribute("height");
    holder.current?.replaceChildren(picture);
  }, [svg]);
  return <div ref={holder} role="img" aria-label={label} aria-busy={isWorking} className="page sheet" />;
}
