import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { sentences } from "../sentences";
import { anything, findOnShelf } from "../shelf/shelfApi";
import { keepFigure, type SheetFigure, type SpotWish } from "./spotApi";

const says = sentences.spots;
const KINDS = ["", "introduction", "fill", "run", "ending"];

interface Props {
  id: string;
  bar: string;
  hands: string[];
  figures: SheetFigure[];
  work: (wish: SpotWish) => void;
  take: (figure: string) => void;
}

/** Figures: made of bars from here, played here, on and off the shelf. */
export function Figures({ id, bar, hands, figures, work, take }: Props) {
  const [name, setName] = useState("");
  const [hand, setHand] = useState(hands.at(-1)!);
  const [kind, setKind] = useState("");
  const [count, setCount] = useState(1);
  const [told, setTold] = useState<{ text: string; isFault: boolean }>();
  const queries = useQueryClient();
  const shelf = useQuery({ queryKey: ["shelf", "figures"], queryFn: ({ signal }) => findOnShelf({ ...anything, kind: "figure" }, signal) });
  const others = shelf.data?.items.filter((item) => !figures.some((figure) => figure.name === item.title)) ?? [];
  const keep = (figure: string) =>
    keepFigure(id, figure).then(
      () => {
        setTold({ text: says.onShelf(figure), isFault: false });
        return queries.invalidateQueries({ queryKey: ["shelf"] });
      },
      (fault: Error) => setTold({ text: fault.message, isFault: true }),
    );
  return (
    <div className="figures">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (name.trim()) work({ action: "figure", bar, hand, figure: name.trim(), bars: count, kind: kind || null });
        }}
      >
        <p>
          {says.saveFigure}
          <select className="word" aria-label={says.figureBars} value={count} onChange={(e) => setCount(Number(e.target.value))}>
            {[1, 2, 3, 4].map((n) => (
              <option key={n} value={n}>
                {says.bars(n)}
              </option>
            ))}
          </select>
          {says.of}
          <select className="word" aria-label={says.figureHand} value={hand} onChange={(e) => setHand(e.target.value)}>
            {hands.map((h) => (
              <option key={h} value={h}>
                {says.handWord(h)}
              </option>
            ))}
          </select>
          {says.as}
          <select className="word" aria-label={says.figureKind} value={kind} onChange={(e) => setKind(e.target.value)}>
            {KINDS.map((k) => (
              <option key={k} value={k}>
                {says.kindOf(k)}
              </option>
            ))}
          </select>
          {says.named}
          <input className="word" aria-label={says.figureName} value={name} maxLength={80} onChange={(e) => setName(e.target.value)} />{" "}
          <button type="submit" className="word" disabled={!name.trim()}>
            {says.save}
          </button>
        </p>
      </form>
      {figures.length > 0 && (
        <p>
          {says.useHere}
          {figures.map(({ name: figure, kind: belongs }) => (
            <span key={figure}>
              <button type="button" className="word" onClick={() => work({ action: "use", bar, figure })}>
                {figure}
              </button>{" "}
              {"("}
              {belongs && (
                <>
                  <button type="button" className="word aside" onClick={() => work({ action: "use", figure })}>
                    {says.whereItBelongs(figure, belongs)}
                  </button>
                  {", "}
                </>
              )}
              <button type="button" className="word aside" onClick={() => void keep(figure)}>
                {says.toShelf(figure)}
              </button>
              {") "}
            </span>
          ))}
        </p>
      )}
      {others.length > 0 && (
        <p>
          {says.fromShelf}
          {others.map((item) => (
            <span key={item.id}>
              <button type="button" className="word" onClick={() => take(item.id)}>
                {item.title}
              </button>{" "}
            </span>
          ))}
        </p>
      )}
      <p className={told?.isFault ? "pencil fault" : "pencil"} role="status">
        {told?.text}
      </p>
    </div>
  );
}
