import { useEffect, useRef, useState } from "react";
import { sentences } from "../sentences";
import type { Pencil } from "../sound/Listen";
import { Drill } from "./Drill";
import { hearTake, type SeenMark, type SeenRemark, type TakeSeen } from "./takeApi";
import { Shape } from "./TakeMarks";
import { Timing } from "./Timing";

interface Props {
  setting: string;
  seen: TakeSeen;
  pencil: Pencil;
  onClose: () => void;
}

/** What was heard in a take, what to do next first. */
export function Report({ setting, seen, pencil, onClose }: Props) {
  const says = sentences.hearing;
  const heading = useRef<HTMLHeadingElement>(null);
  const [fault, setFault] = useState<string>();
  useEffect(() => heading.current?.focus({ preventScroll: false }), []);
  const { heard, next, remarks, marks, refusal } = seen;
  const { player } = pencil;

  async function hear(against: boolean) {
    setFault(undefined);
    try {
      await player.hear(await hearTake(setting, seen.take.id, against), says.playing(against));
    } catch (failure) {
      setFault((failure as Error).message);
    }
  }

  return (
    <section className="report" aria-labelledby="report-title">
      <h2 id="report-title" ref={heading} tabIndex={-1}>
        {says.heard(heard.right, heard.asked, seen.take.taps)}
      </h2>
      {refusal && <p>{refusal[0]!.toUpperCase() + refusal.slice(1)}.</p>}
      {!refusal && next.length === 0 && <p>{says.clean}</p>}
      {next.length > 0 && (
        <>
          <h3>{says.next(next.length)}</h3>
          <ol>
            {next.map((remark) => (
              <Remark key={remark.message} remark={remark} pencil={pencil} setting={setting} take={seen.take.id} />
            ))}
          </ol>
        </>
      )}
      {remarks.length > 0 && (
        <>
          <h3>{says.also}</h3>
          <ul>
            {remarks.map((remark) => (
              <Remark key={remark.message} remark={remark} pencil={pencil} setting={setting} take={seen.take.id} />
            ))}
          </ul>
        </>
      )}
      <p>
        <button type="button" className="word" onClick={() => void hear(false)}>
          {says.back}
        </button>
        {", "}
        <button type="button" className="word" onClick={() => void hear(true)}>
          {says.against}
        </button>
        {player.isPlaying ? (
          <>
            {", "}
            <button type="button" className="word" onClick={player.stop}>
              {says.stop}
            </button>
          </>
        ) : null}
        {says.or}
        <button type="button" className="word aside" onClick={onClose}>
          {says.closeReport}
        </button>
        .
      </p>
      {fault && (
        <p className="pencil fault" role="alert">
          {fault}
        </p>
      )}
      {seen.timing.length > 0 && <Timing strokes={seen.timing} bars={seen.bars} />}
      {marks.length > 0 && <Marked marks={marks} go={pencil.go} />}
      {!refusal && (
        <details>
          <summary>{says.numbers}</summary>
          <ul>
            {seen.summary.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Remark({ remark, pencil, setting, take }: { remark: SeenRemark; pencil: Pencil; setting: string; take: string }) {
  const [hasDrill, setDrill] = useState(false);
  const { firstBar, lastBar, hand, speed } = remark;
  const number = (id: string) => pencil.player.heard?.bars.find((b) => b.id === id)?.number ?? "";
  const hands = hand === "right" || hand === "left" ? hand : "both";
  const sentence = remark.message[0]!.toUpperCase() + remark.message.slice(1);
  return (
    <li>
      {sentence}.{" "}
      <button
        type="button"
        className="word"
        onClick={() => pencil.rehearse({ from: firstBar, to: lastBar, hands, speed, countIn: 1, click: true, loop: true })}
      >
        {sentences.hearing.drill(number(firstBar), number(lastBar), hands, speed)}
      </button>
      {", "}
      <button type="button" className="word" aria-expanded={hasDrill} onClick={() => setDrill(!hasDrill)}>
        {sentences.hearing.itsDrill}
      </button>
      .{hasDrill && <Drill setting={setting} take={take} remark={remark} hear={pencil.hear} />}
    </li>
  );
}

// The marks of the score in words, bar by bar, after what their shapes mean.
function Marked({ marks, go }: { marks: SeenMark[]; go: (bar: string) => void }) {
  const says = sentences.hearing;
  const kinds = [...new Set(marks.map((m) => m.kind))];
  const bars = new Map<string, SeenMark[]>();
  for (const mark of marks) bars.set(mark.bar, [...(bars.get(mark.bar) ?? []), mark]);
  return (
    <>
      <p className="legend">
        {says.legend}
        {kinds.map((kind, i) => (
          <span key={kind} className="kept">
            <svg viewBox="-10 -10 20 20" aria-hidden="true">
              <Shape kind={kind} />
            </svg>{" "}
            {says.kinds[kind]}
            {i < kinds.length - 1 ? ", " : "."}{" "}
          </span>
        ))}
      </p>
      <details>
        <summary>{says.byBar}</summary>
        <ul>
          {[...bars].map(([bar, own]) => (
            <li key={bar}>
              <button
                type="button"
                className="word"
                onClick={() => {
                  go(bar);
                  document.getElementById(bar)?.scrollIntoView({ block: "center" });
                }}
              >
                {sentences.bar(own[0]!.number)}
              </button>
              : {own.map((m) => says.mark(m.hand, m.words)).join("; ")}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
