import { useId, type KeyboardEvent } from "react";
import { sentences } from "../sentences";
import type { SheetStroke } from "./spotApi";
import { added, deleted, Frac, lengthened, merged, moved, pitched, split, thickened, thinned } from "./strokes";

const says = sentences.spots;

interface Props {
  label: string;
  strokes: SheetStroke[];
  chosen: number;
  step: Frac;
  end: Frac;
  /** One key at a time: none is added to a stroke or left out. */
  isLine?: boolean;
  onChoose: (at: number) => void;
  /** @param to Which stroke is chosen then. */
  onChange: (strokes: SheetStroke[], to?: number) => void;
  onBack: () => void;
}

/** Strokes one after the other, each chosen and changed with keys or words. */
export function Strokes({ label, strokes, chosen, step, end, isLine = false, onChoose, onChange, onBack }: Props) {
  const name = useId();
  const changes: { key: string; shift?: boolean; label: string; change: () => void }[] = [
    { key: "ArrowUp", label: says.up, change: () => onChange(pitched(strokes, chosen, 1)) },
    { key: "ArrowDown", label: says.down, change: () => onChange(pitched(strokes, chosen, -1)) },
    { key: "ArrowLeft", shift: true, label: says.earlier, change: () => onChange(moved(strokes, chosen, step, -1, end)) },
    { key: "ArrowRight", shift: true, label: says.later, change: () => onChange(moved(strokes, chosen, step, 1, end)) },
    { key: "+", label: says.longer, change: () => onChange(lengthened(strokes, chosen, step, 1)) },
    { key: "-", label: says.shorter, change: () => onChange(lengthened(strokes, chosen, step, -1)) },
    { key: "t", label: says.tie, change: () => onChange(merged(strokes, chosen)) },
    { key: "s", label: says.split, change: () => onChange(split(strokes, chosen, step)) },
    ...(isLine
      ? []
      : [
          { key: "c", label: says.thicken, change: () => onChange(thickened(strokes, chosen)) },
          { key: "x", label: says.thin, change: () => onChange(thinned(strokes, chosen)) },
        ]),
    { key: "a", label: says.add, change: () => onChange(...added(strokes, chosen, step, end)) },
    { key: "Delete", label: says.delete, change: () => onChange(deleted(strokes, chosen)) },
    { key: "z", label: says.back, change: onBack },
  ];

  function press(event: KeyboardEvent) {
    const shift = event.key.startsWith("Arrow") && event.shiftKey;
    const found = changes.find((c) => c.key === event.key && (c.shift ?? false) === shift);
    if (found && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      found.change();
    } else if ((event.key === "ArrowLeft" || event.key === "ArrowRight") && !shift) {
      event.preventDefault();
      onChoose(Math.max(0, Math.min(strokes.length - 1, chosen + (event.key === "ArrowLeft" ? -1 : 1))));
    }
  }

  return (
    <>
      <div role="listbox" tabIndex={0} aria-label={label} aria-activedescendant={strokes.length > 0 ? `${name}-${chosen}` : undefined} className="strokes" onKeyDown={press}>
        {strokes.map((stroke, i) => (
          <span key={i} id={`${name}-${i}`} role="option" aria-selected={i === chosen} className="stroke" onClick={() => onChoose(i)}>
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
    </>
  );
}

const pretty = (pitch: string) => pitch.replace("#", "♯").replace(/^([A-G])bb/, "$1♭♭").replace(/^([A-G])b/, "$1♭");
