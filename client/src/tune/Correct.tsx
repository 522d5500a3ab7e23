import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState, type FormEvent } from "react";
import type { Brought } from "../api";
import { Sheet } from "../handout/Sheet";
import { sentences } from "../sentences";
import { BarOfTune } from "./BarOfTune";
import { correctTune, keepTune, tuneSheet, tuneTold, type TuneAt, type TuneChange, type TuneTold } from "./tuneApi";
import "./tune.css";

const says = sentences.tune;

interface Props {
  at: TuneAt;
  title: string;
  onCorrected: (brought: Brought) => void;
  /** The tune is to be written on in ABC. */
  onWrite: (abc: string) => void;
}

/** The tune by itself: looked at, plain or as it stands, and corrected. */
export function Correct(props: Props) {
  const [isOpen, setOpen] = useState(false);
  return (
    <section className="tune" aria-label={says.title}>
      <p>
        <button type="button" className="word aside" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? says.close : says.open}
        </button>
      </p>
      {isOpen && <Open {...props} />}
    </section>
  );
}

function Open({ at, title, onCorrected, onWrite }: Props) {
  const queries = useQueryClient();
  const [isPlain, setPlain] = useState(false);
  const [said, setSaid] = useState<{ text: string; isFault: boolean }>();
  const told = useQuery({ queryKey: ["tune", at.id, at.number], queryFn: ({ signal }) => tuneTold(at, signal), staleTime: Infinity, placeholderData: (before) => before });
  const sheet = useQuery({
    queryKey: ["tune-sheet", at.id, at.number, isPlain],
    queryFn: ({ signal }) => tuneSheet(at, isPlain, signal),
    staleTime: Infinity,
    placeholderData: (before) => before,
  });
  async function act(work: () => Promise<string>) {
    try {
      setSaid({ text: await work(), isFault: false });
    } catch (fault) {
      setSaid({ text: (fault as Error).message, isFault: true });
    }
  }
  const correct = (change: TuneChange) =>
    void act(async () => {
      onCorrected(await correctTune(at, change));
      return says.corrected;
    });
  return (
    <>
      <p>
        {says.seen}
        {[false, true].map((plain) => (
          <label key={String(plain)} className="tick">
            <input type="radio" name="plain" checked={isPlain === plain} onChange={() => setPlain(plain)} />
            {plain ? says.plain : says.asItStands}
          </label>
        ))}
        {told.data?.isPlain && <span className="pencil">{says.isPlain}</span>}
      </p>
      {sheet.data?.map((svg, i) => <Sheet key={i} svg={svg} label={says.sheet(title, i + 1, isPlain)} isWorking={sheet.isFetching} />)}
      <div className="pencil" role="status">
        {(told.error ?? sheet.error) && <p className="fault">{(told.error ?? sheet.error)!.message}</p>}
        {said && <p className={said.isFault ? "fault" : undefined}>{said.text}</p>}
      </div>
      {told.data && (
        <>
          <Signature key={`${told.data.key} ${told.data.metre} ${told.data.pickUp}`} told={told.data} correct={correct} />
          <BarOfTune told={told.data} correct={correct} />
          <p>
            <button type="button" className="word aside" onClick={() => onWrite(told.data.abc)}>
              {says.write}
            </button>
            {says.or}
            <button
              type="button"
              className="word aside"
              onClick={() =>
                void act(async () => {
                  const item = await keepTune(at);
                  await queries.invalidateQueries({ queryKey: ["shelf"] });
                  return says.kept(item.title);
                })
              }
            >
              {says.keep}
            </button>
            .
          </p>
        </>
      )}
    </>
  );
}

// Key, metre and pick-up: each a word that is written anew.
function Signature({ told, correct }: { told: TuneTold; correct: (change: TuneChange) => void }) {
  const fields: [string, string, string, string][] = [
    ["key", says.key, told.key.replace(" major", "").replace(" minor", "m"), says.keyHint],
    ["metre", says.metre, told.metre, says.metreHint],
    ["pick-up", says.pickUp, told.pickUp, says.pickUpHint],
  ];
  return (
    <p className="signature">
      {fields.map(([action, label, value, hint]) => (
        <Field key={action} label={label} value={value} hint={hint} onWritten={(next) => correct({ action, bar: 0, value: next })} />
      ))}
    </p>
  );
}

/** A word that is written anew, and holds when it is left with Enter or by its button. */
export function Field({ label, value, hint, onWritten }: { label: string; value: string; hint: string; onWritten: (value: string) => void }) {
  const [text, setText] = useState(value);
  const write = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() !== value) onWritten(text.trim());
  };
  return (
    <form className="field" onSubmit={write}>
      <label>
        {label}
        <input className="line short" title={hint} maxLength={200} value={text} onChange={(e) => setText(e.currentTarget.value)} />
      </label>{" "}
      {text.trim() !== value && (
        <button type="submit" className="word">
          {says.change}
        </button>
      )}
    </form>
  );
}
