import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { sentences } from "../sentences";
import type { Heard } from "../sound/plan";
import { Picture } from "./Picture";
import { tryBar, type SheetStroke, type SpotNotes } from "./spotApi";
import { Strokes } from "./Strokes";
import { Frac } from "./strokes";

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
      <Strokes
        label={says.strokes}
        strokes={strokes}
        chosen={chosen}
        step={Frac.of(notes.step)}
        end={Frac.of(notes.length)}
        onChoose={setAt}
        onChange={put}
        onBack={() => history.length > 1 && setHistory(history.slice(0, -1))}
      />
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
