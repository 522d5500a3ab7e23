import { useEffect, useRef, useState, type MouseEvent, type ReactNode } from "react";
import { sentences } from "../sentences";
import { Card } from "./Card";
import { barAt, placeOf, type Heard, type HeardBar, type Rehearsal } from "./plan";
import { usePlayer } from "./usePlayer";
import "./cursor.css";
import "./listen.css";

interface Props {
  id: string;
  children: ReactNode;
  /** What lies over the pages and in the line above them, for the bar at which the pencil stands. */
  beside: (pencil: Pencil) => { line: ReactNode; card?: ReactNode; over: ReactNode };
}

/** Where the pencil stands, and what it can be asked for. */
export interface Pencil {
  /** Id of the bar; undefined until the music is known. */
  bar: string | undefined;
  layer: HTMLElement | null;
  go: (bar: string) => void;
  hear: (heard: Heard) => void;
  player: ReturnType<typeof usePlayer>;
  /** The rehearsal card is laid out. */
  hasCard: boolean;
  setCard: (has: boolean) => void;
  /** Lays the rehearsal card out, so written. */
  rehearse: (change: Partial<Rehearsal>) => void;
}

/** The score with all that lets it be heard: a line to play it, the rehearsal card, and the pencil’s mark over the pages. */
export function Listen({ id, children, beside }: Props) {
  const player = usePlayer(id);
  const { heard, isPlaying, isFetching, place } = player;
  const [hasCard, setCard] = useState(false);
  const bars = heard?.bars ?? [];
  const bar = heard && barAt(heard, place ?? 0);
  const index = bar ? bars.indexOf(bar) : 0;
  const [layer, setLayer] = useState<HTMLElement | null>(null);
  const { line, card, over } = beside({
    bar: bar?.id,
    layer,
    go(id) {
      const to = bars.find((b) => b.id === id);
      if (to) player.setPlace(to.at);
    },
    hear: (snippet) => void player.hear(snippet),
    player,
    hasCard,
    setCard,
    rehearse(change) {
      player.change(change);
      setCard(true);
      requestAnimationFrame(() => document.getElementById("card-title")?.focus());
    },
  });
  const toggle = () => (isPlaying || isFetching ? player.stop() : void player.play(place));
  useSpace(toggle, isPlaying ? player.stop : undefined);

  function choose(event: MouseEvent) {
    if ((event.target as Element).closest(".spot")) return;
    const chosen = player.cursor.current?.idAt(event.clientX, event.clientY);
    const to = heard && chosen ? placeOf(heard, chosen) : undefined;
    if (!heard || to === undefined) return;
    if (event.shiftKey) {
      const [first, last] = [barAt(heard, Math.min(to, place ?? 0))!, barAt(heard, Math.max(to, place ?? 0))!];
      player.change({ from: first.id, to: last.id });
      setCard(true);
    } else {
      player.setPlace(to);
    }
  }

  return (
    <section aria-label={sentences.listen}>
      <div className="play-line">
        <p>
          <button type="button" className="word" onClick={toggle} disabled={!heard}>
            {isPlaying || isFetching ? sentences.stop : sentences.play}
          </button>
          {sentences.from}
          <span
            className="word"
            role="slider"
            tabIndex={0}
            aria-label={sentences.place}
            aria-valuemin={1}
            aria-valuemax={Math.max(1, bars.length)}
            aria-valuenow={index + 1}
            aria-valuetext={sentences.bar(bar?.number ?? "1")}
            onKeyDown={(event) => {
              const steps: Record<string, number> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: 8, PageUp: -8, Home: -bars.length, End: bars.length };
              const step = steps[event.key];
              if (step !== undefined && heard) {
                player.setPlace(event.shiftKey ? noteBeside(heard, place ?? 0, step) : barBeside(bars, index, step));
              } else if (event.key === "Enter") {
                toggle();
              } else {
                return;
              }
              event.preventDefault();
            }}
          >
            {sentences.bar(bar?.number ?? "1")}
          </span>
          {hasCard ? ". " : ", or "}
          <button type="button" className="word aside" aria-expanded={hasCard} onClick={() => setCard(!hasCard)}>
            {hasCard ? sentences.putCardAway : sentences.rehearse}
          </button>
          {hasCard ? "" : ". "}
          {line}
        </p>
        <p className="pencil" role="status">
          {player.fault ? <span className="fault">{player.fault}</span> : isFetching ? sentences.fetchingPiano : player.aside ? player.aside : <Said isPlaying={isPlaying} number={bar?.number ?? "1"} />}
        </p>
      </div>
      {hasCard && heard && <Card player={player} heard={heard} />}
      {card}
      <div className="listened" ref={setLayer} onClick={choose} onDoubleClick={(event) => !isPlaying && !(event.target as Element).closest(".spot") && void player.play(place)}>
        {children}
        <div className="cursor" ref={player.layer} aria-hidden="true" />
        {over}
      </div>
    </section>
  );
}

const barBeside = (bars: HeardBar[], index: number, step: number) => bars[Math.min(bars.length - 1, Math.max(0, index + step))]!.at;

const noteBeside = ({ notes }: Heard, place: number, step: number) =>
  (step < 0 ? notes.findLast((n) => n.at < place - 0.001) : notes.find((n) => n.at > place + 0.001))?.at ?? place;

// Says that it plays once, not at every bar.
function Said({ isPlaying, number }: { isPlaying: boolean; number: string }) {
  const began = useRef<string>(undefined);
  const hasPlayed = useRef(false);
  if (isPlaying) {
    began.current ??= number;
    hasPlayed.current = true;
    return sentences.playing(sentences.bar(began.current));
  }
  began.current = undefined;
  return hasPlayed.current ? sentences.stopped : "";
}

// The space bar plays and stops, but where it has a meaning of its own; Escape stops.
function useSpace(toggle: () => void, stop: (() => void) | undefined) {
  const latest = useRef({ toggle, stop });
  latest.current = { toggle, stop };
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const target = event.target as HTMLElement;
      const isTaken = target.closest("button, a, input, select, textarea, summary, [contenteditable]") !== null;
      if (event.key === " " && !isTaken && !event.repeat && !event.defaultPrevented) {
        event.preventDefault();
        latest.current.toggle();
      } else if (event.key === "Escape" && !event.defaultPrevented) {
        latest.current.stop?.();
      }
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, []);
}
