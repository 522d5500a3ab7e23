import type { HeardNote } from "./plan";

interface Spot {
  left: number;
  top: number;
  width: number;
  height: number;
}

interface NoteSpot extends Spot {
  /** The system it stands on. */
  system: Spot;
}

const MOST_RINGS = 12; // keys that ten fingers and a pedal hold at once, as far as they are shown
const NEAR = 14; // pixels from a note head that still mean the note

/** The pencil’s mark on the engraved pages: a stroke down the system at what was struck last, and a ring round every note
 * whose key is down. It lies over the pages, which are not drawn again. */
export class Cursor {
  private readonly stroke: HTMLElement;
  private readonly rings: HTMLElement[];
  private spots = new Map<string, NoteSpot>();
  private shown = "";
  private system: Spot | undefined;

  /** @param layer An empty layer that covers the pages. */
  constructor(private readonly layer: HTMLElement) {
    layer.replaceChildren();
    this.stroke = layer.appendChild(document.createElement("div"));
    this.stroke.className = "cursor-stroke";
    this.rings = Array.from({ length: MOST_RINGS }, () => {
      const ring = layer.appendChild(document.createElement("div"));
      ring.className = "cursor-ring";
      return ring;
    });
    this.hide();
  }

  /** To be called when the pages have changed or moved. */
  forget(): void {
    this.spots = new Map();
    this.shown = "";
  }

  /** Finds every note ahead of time, so that nothing is measured while it plays. */
  measure(notes: HeardNote[]): void {
    for (const note of notes) {
      if (note.id) this.spotOf(note.id);
    }
  }

  /** Shows what is struck last, and what is held. @returns the system, where it is another one than before. */
  show(struck: HeardNote[], held: HeardNote[], place: number): Spot | undefined {
    const ids = struck.map((n) => n.id).join(" ");
    const all = `${ids}|${held.map((n) => n.id).join(" ")}`;
    if (all === this.shown) {
      return undefined;
    }
    this.shown = all;
    const at = struck.map((n) => (n.id ? this.spotOf(n.id) : undefined)).find((spot) => spot);
    if (at) {
      put(this.stroke, { left: at.left + at.width / 2, top: at.system.top, width: 0, height: at.system.height });
    }
    this.stroke.hidden = !at;
    if (this.layer.dataset.notes !== ids) {
      this.layer.dataset.notes = ids;
      this.layer.dataset.place = place.toFixed(3);
    }
    const rings = held.flatMap((n) => (n.id && this.spotOf(n.id)) || []);
    this.rings.forEach((ring, i) => {
      const spot = rings[i];
      ring.hidden = !spot;
      if (spot) put(ring, { left: spot.left - 4, top: spot.top - 4, width: spot.width + 8, height: spot.height + 8 });
    });
    const moved = at && at.system.top !== this.system?.top;
    this.system = at?.system ?? this.system;
    return moved ? at.system : undefined;
  }

  /** Stands at a bar or at a note, and nothing sounds. */
  rest(id: string): void {
    this.hide();
    const there = document.getElementById(id);
    const system = there?.closest("g.system");
    if (there && system) {
      const origin = this.layer.getBoundingClientRect();
      const { top, height } = spot(system, origin);
      const { left, width } = spot(there.matches(".note") ? headOf(there) : there, origin);
      put(this.stroke, { left: there.matches(".note") ? left + width / 2 : left, top, width: 0, height });
      this.stroke.hidden = false;
    }
  }

  hide(): void {
    this.shown = "";
    this.system = undefined;
    for (const mark of [this.stroke, ...this.rings]) mark.hidden = true;
    delete this.layer.dataset.notes;
  }

  /** Id of the note, or else of the bar, at a point of the window; undefined where there is neither. */
  idAt(x: number, y: number): string | undefined {
    const pages = this.layer.parentElement!;
    const bar = [...pages.querySelectorAll("g.measure")].find((measure) => isInside(measure.getBoundingClientRect(), x, y, 4));
    const note = [...(bar?.querySelectorAll("g.note") ?? [])].find((n) => isInside(headOf(n).getBoundingClientRect(), x, y, NEAR / 2));
    return note?.id ?? bar?.id;
  }

  private spotOf(id: string): NoteSpot | undefined {
    const known = this.spots.get(id);
    if (known) {
      return known;
    }
    const note = document.getElementById(id);
    const system = note?.closest("g.system");
    if (!note || !system) {
      return undefined;
    }
    const origin = this.layer.getBoundingClientRect();
    const found = { ...spot(headOf(note), origin), system: spot(system, origin) };
    this.spots.set(id, found);
    return found;
  }
}

const headOf = (note: Element) => note.querySelector(".notehead") ?? note;

const isInside = (box: DOMRect, x: number, y: number, room: number) =>
  x >= box.left - room && x <= box.right + room && y >= box.top - room && y <= box.bottom + room;

function spot(element: Element, origin: DOMRect): Spot {
  const box = element.getBoundingClientRect();
  return { left: box.left - origin.left, top: box.top - origin.top, width: box.width, height: box.height };
}

function put(mark: HTMLElement, { left, top, width, height }: Spot): void {
  mark.style.transform = `translate(${left}px, ${top}px)`;
  mark.style.width = `${width}px`;
  mark.style.height = `${height}px`;
}
