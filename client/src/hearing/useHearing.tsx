import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState, type ReactNode } from "react";
import { sentences } from "../sentences";
import type { Pencil } from "../sound/Listen";
import { HearCard } from "./HearCard";
import { tellUntold } from "./recorder";
import { Report } from "./Report";
import { bringTake, seeTake, type TakeSeen } from "./takeApi";
import { TakeMarks } from "./TakeMarks";
import { TapPad } from "./TapPad";
import { useTaking } from "./useTaking";
import "./hear.css";

// What is read stands between these shares of the window's height.
const HIGHEST = 0.12;
const LOWEST = 0.6;

/** Being heard: a card to begin a take by, and what was heard in it, on the score and in words.
 * @param piece Id of the arrangement on the shelf. */
export function useHearing(setting: string, piece: string | undefined) {
  const queries = useQueryClient();
  const [isOpen, setOpen] = useState(false);
  const [seen, setSeen] = useState<TakeSeen>();
  const opener = useRef<HTMLButtonElement>(null);
  const pencil = useRef<Pencil>(undefined);
  const taking = useTaking({
    setting,
    pencil: () => pencil.current,
    onSeen(next) {
      setSeen(next);
      void queries.invalidateQueries({ queryKey: ["takes"] });
    },
  });
  const { stage, bar, leave } = taking;
  const isBusy = stage === "listening" || stage === "checking";
  const isWaited = stage === "opening" || stage === "thinking";
  useLeaving(isBusy ? leave : undefined);
  useEffect(() => {
    void tellUntold().then(() => queries.invalidateQueries({ queryKey: ["takes"] }));
  }, []);
  useEffect(() => setSeen(undefined), [setting]);
  useEffect(() => {
    if (!bar) return;
    pencil.current?.go(bar);
    const system = document.getElementById(bar)?.closest("g.system");
    const { top = 0, bottom = 0 } = system?.getBoundingClientRect() ?? {};
    // Between the line above and where taps are given below.
    if (top < HIGHEST * window.innerHeight || bottom > LOWEST * window.innerHeight) system?.scrollIntoView({ block: "center" });
  }, [bar]);

  async function show(fetching: Promise<TakeSeen>) {
    taking.setFault(undefined);
    try {
      setSeen(await fetching);
      void queries.invalidateQueries({ queryKey: ["takes"] });
    } catch (failure) {
      taking.setFault((failure as Error).message);
    }
  }

  function open() {
    pencil.current?.setCard(false);
    setOpen(true);
  }

  function close() {
    setOpen(false);
    setSeen(undefined);
    opener.current?.focus();
  }

  return (now: Pencil): { line: ReactNode; card: ReactNode; over: ReactNode } => {
    pencil.current = now;
    const says = sentences.hearing;
    const number = now.player.heard?.bars.find((b) => b.id === bar)?.number;
    return {
      line: isBusy ? (
        <>
          {" "}
          <b className="hearing">{stage === "checking" ? says.checking : says.listening(number)}</b>{" "}
          <button type="button" className="word" autoFocus onClick={leave}>
            {says.done}
          </button>
          .
        </>
      ) : (
        <>
          {" "}
          <button ref={opener} type="button" className="word aside" aria-expanded={isOpen} onClick={() => (isOpen ? close() : open())}>
            {isOpen ? says.close : says.open}
          </button>
          .
        </>
      ),
      card: isOpen && now.player.heard && (
        <>
          {!isBusy && !now.hasCard && (
            <HearCard
              taking={taking}
              player={now.player}
              heard={now.player.heard}
              piece={piece}
              shown={seen?.take.id}
              look={(take) => void show(seeTake(setting, take))}
              bring={(file, wish) => void show(bringTake(setting, wish, file))}
            />
          )}
          {taking.isTapping && <TapPad tap={taking.tap} lift={taking.lift} />}
          <p className="pencil" role="status">
            {taking.fault ? <span className="fault">{taking.fault}</span> : isWaited ? says.thinking : ""}
          </p>
          {seen && !isBusy && !isWaited && <Report key={seen.take.id + seen.take.at} setting={setting} seen={seen} pencil={now} onClose={() => setSeen(undefined)} />}
        </>
      ),
      over: seen && !isBusy && <TakeMarks marks={seen.marks} layer={now.layer} />,
    };
  };
}

// Space or Escape says that it was all; nothing else takes them meanwhile.
function useLeaving(leave: (() => void) | undefined) {
  const latest = useRef(leave);
  latest.current = leave;
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!latest.current || (event.key !== " " && event.key !== "Escape")) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      if (!event.repeat) latest.current();
    };
    window.addEventListener("keydown", press, { capture: true });
    return () => window.removeEventListener("keydown", press, { capture: true });
  }, []);
}
