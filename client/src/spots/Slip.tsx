import { useQuery } from "@tanstack/react-query";
import { useEffect, useLayoutEffect, useRef, useState, type Dispatch, type ReactNode, type SetStateAction } from "react";
import { watchLayout } from "../layout";
import { sentences } from "../sentences";
import type { Heard } from "../sound/plan";
import { Figures } from "./Figures";
import { notesOf, type SheetFigure, type SpotWish } from "./spotApi";
import { Ways } from "./Ways";
import { Write } from "./Write";

interface Props {
  id: string;
  bar: string;
  figures: SheetFigure[];
  layer: HTMLElement | null;
  isWorking: boolean;
  fault: string | undefined;
  said: string | undefined;
  hear: (heard: Heard) => void;
  work: (wish: SpotWish) => void;
  /** Kept outside: while new pages are laid out there is no slip. */
  open: Open;
  setOpen: Dispatch<SetStateAction<Open>>;
  /** A figure of the shelf is put beside the setting. */
  take: (figure: string) => void;
  onClose: () => void;
}

/** What lies open on a slip. */
export type Open = "ways" | "write" | "figure" | undefined;

/** A slip of paper laid under a bar: why it is so, and what can be done about it. */
export function Slip({ id, bar, figures, layer, isWorking, fault, said, hear, work, take, onClose, open, setOpen }: Props) {
  const { data, error } = useQuery({
    queryKey: ["bar", id, bar],
    queryFn: ({ signal }) => notesOf(id, bar, signal),
    staleTime: Infinity,
    placeholderData: (before) => before,
  });
  const slip = useRef<HTMLElement>(null);
  const top = useTop(layer, bar, id);
  useEffect(() => slip.current?.focus({ preventScroll: true }), []);
  useEffect(() => setOpen((now) => (now === "write" ? undefined : now)), [bar, setOpen]);
  const says = sentences.spots;
  const kept = data?.bar.kept ?? [];
  const hands = data && data.right.length === 0 && data.left.length > 0 ? ["left"] : ["right", "left"];
  const opener = (what: Exclude<Open, undefined>, label: string) => (
    <button type="button" className="word" aria-expanded={open === what} onClick={() => setOpen(open === what ? undefined : what)}>
      {label}
    </button>
  );
  return (
    <section
      ref={slip}
      tabIndex={-1}
      className="spot"
      style={{ top }}
      aria-label={says.slip(data?.bar.number ?? "")}
      aria-busy={isWorking}
      onKeyDown={(event) => {
        if (event.key === "Escape" && !event.defaultPrevented) {
          event.preventDefault();
          onClose();
        }
      }}
    >
      {error && <p className="pencil fault" role="alert">{error.message}</p>}
      {data && (
        <>
          <h2>
            {says.heading(sentences.bar(data.bar.number))} <span className="pencil">{says.efforts(data.bar.effort, data.rightEffort, data.leftEffort)}</span>
          </h2>
          <Reasons>{data.reasons.map((reason) => says.reason(reason.hand, reason.message))}</Reasons>
          <p>
            {hands.map((hand) => (
              <span key={hand}>
                <button
                  type="button"
                  className="word"
                  aria-pressed={kept.includes(hand)}
                  onClick={() => work({ action: kept.includes(hand) ? "release" : "keep", bar, hand })}
                >
                  {kept.includes(hand) ? says.release(hand) : says.keep(hand)}
                </button>
                ,{" "}
              </span>
            ))}
            {opener("ways", says.ways)}, {opener("write", says.write)} {says.or} {opener("figure", says.figure)}.
          </p>
          {fault && <p className="pencil fault" role="alert">{fault}</p>}
          <p className="pencil" role="status">
            {isWorking ? says.working : said}
          </p>
          {open === "ways" && <Ways id={id} bar={bar} hear={hear} take={(way) => work({ action: "choose", bar, way })} />}
          {open === "write" && (
            <Write
              key={id + bar}
              id={id}
              bar={bar}
              notes={data}
              hands={hands}
              hear={hear}
              keep={(hand, strokes) => work({ action: "write", bar, hand, strokes })}
            />
          )}
          {open === "figure" && <Figures id={id} bar={bar} hands={hands} figures={figures} work={work} take={take} />}
        </>
      )}
      <p>
        <button type="button" className="word aside" onClick={onClose}>
          {says.close}
        </button>
      </p>
    </section>
  );
}

function Reasons({ children }: { children: string[] }): ReactNode {
  return children.length === 0 ? (
    <p className="pencil">{sentences.spots.noReasons}</p>
  ) : (
    <ul className="reasons pencil">
      {children.map((sentence, i) => (
        <li key={i}>{sentence}</li>
      ))}
    </ul>
  );
}

// Under the system of the bar.
function useTop(layer: HTMLElement | null, bar: string, id: string): number {
  const [top, setTop] = useState(0);
  useLayoutEffect(() => {
    if (!layer) return;
    const measure = () => {
      const system = document.getElementById(bar)?.closest("g.system");
      if (system) setTop(system.getBoundingClientRect().bottom - layer.getBoundingClientRect().top + 6);
    };
    measure();
    return watchLayout(layer, measure);
  }, [layer, bar, id]);
  return top;
}
