import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { sentences } from "../sentences";
import type { Heard } from "../sound/plan";
import { Picture } from "./Picture";
import { way, waysOf, type WayFound } from "./spotApi";

interface Props {
  id: string;
  bar: string;
  hear: (heard: Heard) => void;
  take: (name: string) => void;
}

const [SHARE, NUMBER] = [0.01, 0.1]; // least moves of style worth a word
const LINGER = 500; // milliseconds on a word before it sounds

/** Other ways for a bar, the cheapest of a kind first; each is engraved when it comes into view. */
export function Ways({ id, bar, hear, take }: Props) {
  const { data, error } = useQuery({
    queryKey: ["ways", id, bar],
    queryFn: ({ signal }) => waysOf(id, bar, signal),
    staleTime: Infinity,
  });
  const [all, setAll] = useState(false);
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p role="status">{sentences.spots.looking}</p>;
  if (data.length === 0) return <p>{sentences.spots.noWays}</p>;
  const first = data.filter((w) => w.name.endsWith("-1"));
  const shown = all ? data : first;
  return (
    <>
      <ul className="ways">
        {shown.map((found) => (
          <OtherWay key={found.name} id={id} bar={bar} found={found} hear={hear} take={take} />
        ))}
      </ul>
      {!all && data.length > first.length && (
        <p>
          <button type="button" className="word aside" onClick={() => setAll(true)}>
            {sentences.spots.moreWays(data.length - first.length)}
          </button>
        </p>
      )}
    </>
  );
}

function OtherWay({ id, bar, found, hear, take }: Props & { found: WayFound }) {
  const { data } = useQuery({
    queryKey: ["way", id, bar, found.name],
    queryFn: ({ signal }) => way(id, bar, found.name, signal),
    staleTime: Infinity,
  });
  const heard = data?.heard;
  const says = sentences.spots;
  const moves = found.style
    .filter(({ unit, before, after }) => Math.abs(after - before) >= (unit === "share" ? SHARE : NUMBER))
    .map(({ words, unit, before, after, reference }) => says.style(words, unit, before, after, reference));
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (
    <li>
      <p className="way-words">
        <b>{says.kind(found.name)}</b> {found.changes.join("; ")}. {says.effort(found.effortBefore, found.effortAfter)}{" "}
        {moves.length > 0 && `${says.styleMoves(moves.join("; "))} `}
        {found.otherBars.length > 0 && says.otherBars(found.otherBars.join(", "))}
      </p>
      {data?.picture && <Picture svg={data.picture} label={says.pictured(says.kind(found.name))} />}
      <p>
        <button
          type="button"
          className="word"
          disabled={!heard}
          onClick={() => heard && hear(heard)}
          onPointerEnter={(e) => {
            if (e.pointerType === "mouse" && heard) timer = setTimeout(() => hear(heard), LINGER);
          }}
          onPointerLeave={() => clearTimeout(timer)}
        >
          {says.hear}
        </button>{" "}
        <button type="button" className="word" onClick={() => take(found.name)}>
          {says.take}
        </button>
      </p>
    </li>
  );
}
