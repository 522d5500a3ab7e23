import type { Cursor } from "./cursor";
import type { HeardNote } from "./plan";

/** Seconds within which keys are struck together. */
export const ONE_STROKE = 0.001;

// A frame has no time to look at every note of a long piece.
const longest = new WeakMap<HeardNote[], number>();

/** Marks what is struck and held at a place of the piece, and brings its system into sight.
 * @param notes By the time of their stroke; the same ones from frame to frame. */
export function follow(cursor: Cursor, layer: HTMLElement, notes: HeardNote[], at: number) {
  const last = notes[countTo(notes, at) - 1];
  const struck = last ? notes.slice(countTo(notes, last.at - ONE_STROKE), countTo(notes, last.at + ONE_STROKE)) : [];
  if (!longest.has(notes)) longest.set(notes, notes.reduce((most, n) => Math.max(most, n.length), 0));
  const held = notes.slice(countTo(notes, at - longest.get(notes)!), countTo(notes, at)).filter((n) => n.at + n.length > at);
  const system = cursor.show(struck, held, at);
  if (!system) return;
  const top = layer.getBoundingClientRect().top + system.top;
  if (top < window.innerHeight * 0.12 || top + system.height > window.innerHeight * 0.95) {
    // At once, as a page is turned: a score that glides cannot be read meanwhile, and drops frames.
    window.scrollBy({ top: top - window.innerHeight * 0.2, behavior: "instant" });
  }
}

// How many begin at a place or before it.
function countTo(notes: HeardNote[], at: number): number {
  let [low, high] = [0, notes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (notes[middle]!.at <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}
