import { useLayoutEffect, useRef } from "react";
import { engraved } from "../engraved";

// What is left off a page’s margins so that the music is larger, as shares of its width and height.
const SIDE = 0.038;
const END = 0.02;

/** A page of the engraver without its outer margins. Its names are its own, since the same page lies on the desk too. */
export function leafOf(svg: string, page: number): SVGSVGElement | null {
  const picture = engraved(svg);
  if (!picture) return null;
  const { x, y, width, height } = picture.viewBox.baseVal;
  picture.setAttribute("viewBox", [x + width * SIDE, y + height * END, width * (1 - 2 * SIDE), height * (1 - 2 * END)].join(" "));
  const own = (name: string) => `stand-${page}-${name}`;
  for (const element of picture.querySelectorAll("[id]")) element.id = own(element.id);
  for (const element of picture.querySelectorAll("use")) {
    for (const name of ["href", "xlink:href"]) {
      const target = element.getAttribute(name);
      if (target?.startsWith("#")) element.setAttribute(name, "#" + own(target.slice(1)));
    }
  }
  return picture;
}

/** Width of a leaf to its height. */
export const shapeOf = (picture: SVGSVGElement) => picture.viewBox.baseVal.width / picture.viewBox.baseVal.height;

interface Props {
  picture: SVGSVGElement;
  label: string;
  /** In pixels. */
  height: number;
  /** What is to be seen of it, and how far it is moved up, as shares of its height; undefined: nothing. */
  seen: { from: number; to: number; up: number } | undefined;
  /** Told the heights between its systems, as shares of its own. */
  onCuts: (cuts: number[]) => void;
}

/** A leaf in its place. One that is not seen is laid out all the same, so that it is there when the page turns. */
export function Leaf({ picture, label, height, seen, onCuts }: Props) {
  const holder = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    holder.current?.replaceChildren(picture);
    onCuts(cutsOf(picture));
  }, [picture]);
  return (
    <div
      ref={holder}
      role="img"
      aria-label={label}
      className={seen ? "page leaf" : "page leaf hidden"}
      style={{
        width: height * shapeOf(picture),
        height,
        clipPath: seen && `inset(${seen.from * 100}% 0 ${(1 - seen.to) * 100}% 0)`,
        transform: seen && `translateY(${-seen.up * 100}%)`,
      }}
    />
  );
}

function cutsOf(picture: SVGSVGElement): number[] {
  const all = picture.getBoundingClientRect();
  const systems = [...picture.querySelectorAll(".system")]
    .map((s) => s.getBoundingClientRect())
    .filter((s) => s.height > 0)
    .sort((a, b) => a.top - b.top);
  return systems.slice(1).map((s, i) => ((systems[i]!.bottom + s.top) / 2 - all.top) / all.height);
}
