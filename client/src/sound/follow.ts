import type { Cursor } from "./cursor";
import type { HeardNote } from "./plan";

/** Seconds within which keys are struck together. */
export const ONE_STROKE = 0.001;

/** Marks what is struck and held at a place of the piece, and brings its system into sight. */
export function follow(cursor: Cursor, layer: HTMLElement, notes: HeardNote[], at: number) {
  const last = notes.findLast((n) => n.at <= at);
  const struck = last ? notes.filter((n) => Math.abs(n.at - last.at) < ONE_STROKE) : [];
  const held = notes.filter((n) => n.at <= at && n.at + n.length > at);
  const system = cursor.show(struck, held, at);
  if (!system) return;
  const top = layer.getBoundingClientRect().top + system.top;
  if (top < window.innerHeight * 0.12 || top + system.height > window.innerHeight * 0.95) {
    const isCalm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    window.scrollBy({ top: top - window.innerHeight * 0.2, behavior: isCalm ? "instant" : "smooth" });
  }
}
