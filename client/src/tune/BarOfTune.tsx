import { useEffect, useState } from "react";
import { sentences } from "../sentences";
import type { SheetStroke } from "../spots/spotApi";
import { Strokes } from "../spots/Strokes";
import { Frac } from "../spots/strokes";
import { Field } from "./Correct";
import type { TuneChange, TuneTold } from "./tuneApi";

const says = sentences.tune;

/** One bar of the tune: its notes and its chords. */
export function BarOfTune({ told, correct }: { told: TuneTold; correct: (change: TuneChange) => void }) {
  const [index, setIndex] = useState(0);
  const at = Math.min(index, told.bars.length - 1);
  const bar = told.bars[at]!;
  const [history, setHistory] = useState<SheetStroke[][]>([bar.notes]);
  const [chosen, setChosen] = useState(0);
  const written = JSON.stringify(bar.notes);
  useEffect(() => {
    setHistory([JSON.parse(written) as SheetStroke[]]);
    setChosen(0);
  }, [at, written]);
  const strokes = history.at(-1)!;
  return (
    <div className="write">
      <p>
        {says.bar}
        <select className="word" aria-label={says.which} value={at} onChange={(e) => setIndex(Number(e.currentTarget.value))}>
          {told.bars.map((b, i) => (
            <option key={i} value={i}>
              {sentences.barNumber(b.number)}
            </option>
          ))}
        </select>
        {": "}
      </p>
      <Field
        key={`${at} ${bar.chords}`}
        label={says.chords}
        value={bar.chords}
        hint={says.chordsHint}
        onWritten={(value) => correct({ action: "chords", bar: at, value })}
      />
      <Strokes
        label={says.notes(bar.number)}
        strokes={strokes}
        chosen={Math.max(0, Math.min(chosen, strokes.length - 1))}
        step={Frac.of(told.step)}
        end={Frac.of(bar.length)}
        isLine
        onChoose={setChosen}
        onChange={(next, to = chosen) => {
          setHistory([...history, next]);
          setChosen(Math.max(0, Math.min(to, next.length - 1)));
        }}
        onBack={() => history.length > 1 && setHistory(history.slice(0, -1))}
      />
      <p>
        <button type="button" className="word" disabled={history.length < 2} onClick={() => correct({ action: "notes", bar: at, notes: strokes })}>
          {says.writeNotes}
        </button>
      </p>
    </div>
  );
}
