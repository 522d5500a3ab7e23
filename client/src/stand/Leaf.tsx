import { useLayoutEffect, useRef } from "react";
import { engraved } from "../engraved";

// What is left off a page’s margins so that the music is larger, as shares of its width and height.
const SIDE = 0.038;
const END = 0.02;

const own = (page: number, name: string) => `stand-${page}-${name}`;

/** Where a bar or a note stands: its page from 0, and its height on it as a share; undefined: it is not there.
 * @param pictures Leaves that are laid out. */
export function placeOn(pictures: (SVGSVGElement | null)[], id: string): { page: number; height: number } | undefined {
  for (const [page, picture] of pictures.entries()) {
    const there = picture?.querySelector(`#${CSS.escape(own(page + 1, id))}`);
    if (picture && there) {
      const [whole, box] = [picture.getBoundingClientRect(), there.getBoundingClientRect()];
      return { page, height: (box.top + box.height / 2 - whole.top) / whole.height };
    }
  }
  return undefined;
}

/** A page of the engraver without its outer margins. Its names are its own, since the same page lies on the desk too. */
export function leafOf(svg: string, page: number): SVGSVGElement | null {
  const picture = engraved(svg);
  if (!picture) return null;
  const { x, y, width, height } = picture.viewBox.baseVal;
  picture.setAttribute("viewBox", [x + width * SIDE, y + height * END, width * (1 - 2 * SIDE), height * (1 - 2 * END)].join(" "));
  // What is inside keeps its size: it would take that of what is shown.
  for (const inner of picture.querySelectorAll(":scope > svg")) {
    inner.setAttribute("width", String(width));
    inner.setAttribute("height", String(height));
  }
  for (const element of picture.querySelectorAll("[id]")) element.id = own(page, element.id);
  for (const element of picture.querySelectorAll("use")) {
    for (const name of ["href", "xlink:href"]) {
      const target = element.getAttribute(name);
      if (target?.startsWith("#")) element.setAttribute(name, "#" + own(page, target.slice(1)));
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

// A line of text takes more height than its letters do.
const LEADING = 0.25;

function inkOf(system: Element): { top: number; bottom: number } {
  let [top, bottom] = [Infinity, -Infinity];
  for (const drawn of system.querySelectorAll("use, path, rect, ellipse, polygon, polyline, text")) {
    const box = drawn.getBoundingClientRect();
    if (box.height === 0 && box.width === 0) continue;
    const leading = drawn.localName === "text" ? box.height * LEADING : 0;
    top = Math.min(top, box.top + leading);
    bottom = Math.max(bottom, box.bottom - leading);
  }
  return { top, bottom };
}

function cutsOf(picture: SVGSVGElement): number[] {
  const all = picture.getBoundingClientRect();
  const systems = [...picture.querySelectorAll(".system")]
    .map(inkOf)
    .filter((s) => s.bottom > s.top)
    .sort((a, b) => a.top - b.top);
  const between = systems.slice(1).map((s, i) => ({ above: systems[i]!.bottom, below: s.top }));
  // Where systems reach into each other no straight cut is clean: such places are for pages that have no other.
  const clean = between.filter((b) => b.above <= b.below);
  return (clean.length > 0 ? clean : between).map((b) => ((b.above + b.below) / 2 - all.top) / all.height);
}
