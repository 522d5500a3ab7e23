import { useQuery } from "@tanstack/react-query";
import { useState, type KeyboardEvent } from "react";
import { sentences } from "../sentences";
import type { Heard } from "../sound/plan";
import { Picture } from "./Picture";
import { tryBar, type SheetStroke, type SpotNotes } from "./spotApi";
import { added, deleted, Frac, lengthened, merged, moved, pitched, split, thickened, thinned } from "./strokes";

interface Props {
  id: string;
  bar: string;
  notes: SpotNotes;
  hands: string[];
  hear: (heard: Heard) => void;
  keep: (hand: string, strokes: SheetStroke[]) => void;
}

/** A bar of one hand to be written otherwise, stroke by stroke; what stands there is judged at every change. */
export function Write({ id, bar, notes, hands, hear, keep }: Props) {
  const [hand, setHand] = useState(hands[0]!);
  const [history, setHistory] = useState<SheetStroke[][]>([of(notes, hand)]);
  const [at, setAt] = useState(0);
  const strokes = history.at(-1)!;
  const chosen = Math.min(at, strokes.length - 1);
  const says = sentences.spots;
  const step = Frac.of(notes.step);
  const end = Frac.of(notes.length);
  const tried = useQuery({
    queryKey: ["try", id, bar, hand, strokes],
    queryFn: ({ signal }) => tryBar(id, bar, hand, strokes, signal),
    placeholderData: (before) => before,
  });
  const seen = tried.data;

  function put(next: SheetStroke[], to = chosen) {
    setHistory([...history, next]);
    setAt(Math.max(0, Math.min(to, next.length - 1)));
  }
  const changes: { key: string; shift?: boolean; label: string; change: () => void }[] = [
    { key: "ArrowUp", label: says.up, change: () => put(pitched(strokes, chosen, 1)) },
    { key: "ArrowDown", label: says.down, change: () => put(pitched(strokes, chosen, -1)) },
    { key: "ArrowLeft", shift: true, label: says.earlier, change: () => put(moved(strokes, chosen, step, -1, end)) },
    { key: "ArrowRight", shift: true, label: says.later, change: () => put(moved(strokes, chosen, step, 1, end)) },
    { key: "+", label: says.longer, change: () => put(lengthened(strokes, chosen, step, 1)) },
    { key: "-", label: says.shorter, change: () => put(lengthened(strokes, chosen, step, -1)) },
    { key: "t", label: says.tie, change: () => put(merged(strokes, chosen)) },
    { key: "s", label: says.split, change: () => put(split(strokes, chosen, step)) },
    { key: "c", label: says.thicken, change: () => put(thickened(strokes, chosen)) },
    { key: "x", label: says.thin, change: () => put(thinned(strokes, chosen)) },
    { key: "a", label: says.add, change: () => put(...added(strokes, chosen, step, end)) },
    { key: "Delete", label: says.delete, change: () => put(deleted(strokes, chosen)) },
    { key: "z", label: says.back, change: () => history.length > 1 && setHistory(history.slice(0, -1)) },
  ];

  function press(event: KeyboardEvent) {
    const shift = event.key.startsWith("Arrow") && event.shiftKey;
    const found = changes.find((c) => c.key === event.key && (c.shift ?? false) === shift);
    if (found && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      found.change();
    } else if ((event.key === "ArrowLeft" || event.key === "ArrowRight") && !shift) {
      event.preventDefault();
      setAt(Math.max(0, Math.min(strokes.length - 1, chosen + (event.key === "ArrowLeft" ? -1 : 1))));
    }
  }

  return (
    <div className="write">
      {hands.length > 1 && (
        <p>
          {hands.map((h) => (
            <span key={h}>
              <button
                type="button"
                className="word"
                aria-pressed={h === hand}
                onClick={() => {
                  setHand(h);
                  setHistory([of(notes, h)]);
                  setAt(0);
                }}
              >
                {says.handWord(h)}
              </button>{" "}
            </span>
          ))}
        </p>
      )}
      <div role="listbox" tabIndex={0} aria-label={says.strokes} aria-activedescendant={strokes.length > 0 ? `stroke-${chosen}` : undefined} className="strokes" onKeyDown={press}>
        {strokes.map((stroke, i) => (
          <span key={i} id={`stroke-${i}`} role="option" aria-selected={i === chosen} className="stroke" onClick={() => setAt(i)}>
            <b>{[...stroke.pitches].reverse().map(pretty).join(" ")}</b> {says.placed(Frac.of(stroke.at).over(step), Frac.of(stroke.length).over(step))}
          </span>
        ))}
        {strokes.length === 0 && says.silent}
      </div>
      <p className="changes">
        {changes.map(({ key, shift, label, change }) => (
          <span key={label}>
            <button type="button" className="word" onClick={change} aria-keyshortcuts={(shift ? "Shift+" : "") + key}>
              {label}
            </button>{" "}
          </span>
        ))}
      </p>
      <p className="pencil">{says.writeKeys}</p>
      <div role="status" aria-live="polite">
        {tried.error ? <p className="fault">{tried.error.message}</p> : seen?.refusal ? <p className="pencil fault">{seen.refusal}</p> : seen?.effort != null && <p className="pencil">{says.judged(seen.effort, seen.otherBars)}</p>}
      </div>
      {seen?.picture && <Picture svg={seen.picture} label={says.pictured(says.written)} />}
      <p>
        <button type="button" className="word" disabled={!seen?.heard} onClick={() => seen?.heard && hear(seen.heard)}>
          {says.hear}
        </button>{" "}
        <button type="button" className="word" disabled={!seen?.picture || tried.isFetching || history.length < 2} onClick={() => keep(hand, strokes)}>
          {says.keepWritten}
        </button>
      </p>
    </div>
  );
}

const of = (notes: SpotNotes, hand: string) => (hand === "right" ? notes.right : notes.left);

const pretty = (pitch: string) => pitch.replace("#", "♯").replace(/^([A-G])bb/, "$1♭♭").replace(/^([A-G])b/, "$1♭");
