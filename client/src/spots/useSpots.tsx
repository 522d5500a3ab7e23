import { keepPreviousData, useQuery, useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState, type ReactNode } from "react";
import { sentences } from "../sentences";
import type { Pencil } from "../sound/Listen";
import { Marks } from "./Marks";
import { Slip, type Open } from "./Slip";
import { bars as fetchBars, takeFigure, workOnBar, type SpotMade } from "./spotApi";
import "./spots.css";

const NEXT_HARD = "h";

/** Work on single bars of a setting: marks over the pages, a slip under the bar where the pencil stands.
 * @param onMade Called with the setting that came of it; throws where there is no place for it any more. */
export function useSpots(id: string, onMade: (made: SpotMade) => void) {
  const queries = useQueryClient();
  const [isOpen, setOpen] = useState(false);
  const [lies, setLies] = useState<Open>();
  const [isWorking, setWorking] = useState(false);
  const [fault, setFault] = useState<string>();
  const [said, setSaid] = useState<string>();
  const opener = useRef<HTMLButtonElement>(null);
  const { data } = useQuery({
    queryKey: ["bars", id],
    queryFn: ({ signal }) => fetchBars(id, signal),
    staleTime: Infinity,
    placeholderData: keepPreviousData,
  });

  async function work(make: () => Promise<SpotMade>) {
    setWorking(true);
    setFault(undefined);
    setSaid(undefined);
    try {
      const made = await make();
      onMade(made);
      setSaid(sentences.spots.worked(made.changed));
      await queries.invalidateQueries({ queryKey: ["bars", made.setting.id] });
    } catch (failure) {
      setFault(failure instanceof Error ? failure.message : sentences.noAnswer);
    } finally {
      setWorking(false);
    }
  }

  const pencil = useRef<Pencil>(undefined);
  const nextHard = () => {
    const bars = data?.bars ?? [];
    const at = bars.findIndex((b) => b.id === pencil.current?.bar);
    const next = [...bars.slice(at + 1), ...bars.slice(0, at + 1)].find((b) => b.hard > 0);
    if (next) {
      pencil.current?.go(next.id);
      document.getElementById(next.id)?.scrollIntoView({ block: "center" });
    }
  };
  useHardKey(nextHard);

  return (now: Pencil): { line: ReactNode; over: ReactNode } => {
    pencil.current = now;
    const says = sentences.spots;
    const hasHard = data?.bars.some((b) => b.hard > 0) ?? false;
    return {
      line: data && (
        <>
          <button ref={opener} type="button" className="word aside" aria-expanded={isOpen} disabled={!now.bar} onClick={() => setOpen(!isOpen)}>
            {isOpen ? says.lookAway : says.look}
          </button>
          {hasHard && (
            <>
              {", "}
              <button type="button" className="word aside" aria-keyshortcuts={NEXT_HARD} disabled={!now.bar} onClick={nextHard}>
                {says.nextHard}
              </button>
            </>
          )}
          .
        </>
      ),
      over: data && (
        <>
          <Marks bars={data.bars} chosen={isOpen ? now.bar : undefined} layer={now.layer} />
          {isOpen && now.bar && (
            <Slip
              id={id}
              bar={now.bar}
              figures={data.figures}
              layer={now.layer}
              isWorking={isWorking}
              fault={fault}
              said={said}
              hear={now.hear}
              work={(wish) => void work(() => workOnBar(id, wish))}
              take={(figure) => void work(() => takeFigure(id, figure))}
              open={lies}
              setOpen={setLies}
              onClose={() => {
                setOpen(false);
                setLies(undefined);
                opener.current?.focus();
              }}
            />
          )}
        </>
      ),
    };
  };
}

// One key leads from each hard place to the next, where nothing is written.
function useHardKey(next: () => void) {
  const latest = useRef(next);
  latest.current = next;
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const isTaken = (event.target as HTMLElement).closest("input, select, textarea, [role=listbox], [contenteditable]") !== null;
      if (event.key === NEXT_HARD && !isTaken && !event.ctrlKey && !event.metaKey && !event.altKey) {
        event.preventDefault();
        latest.current();
      }
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, []);
}
