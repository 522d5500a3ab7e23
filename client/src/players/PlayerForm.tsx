import { useDebouncedValue } from "@mantine/hooks";
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { sentences } from "../sentences";
import type { ShelfItem } from "../shelf/shelfApi";
import { LeapTest } from "./LeapTest";
import { keepPlayer, player, tryPlayer, type HandsSaid, type PlayerTold } from "./playerApi";

const says = sentences.players;
const TYPING_PAUSE = 350; // milliseconds
const HANDS = ["left", "right"];
const FINGERS = ["1", "2", "3", "4", "5"];
const OCTAVES = ["165.1", "152.4", "139.7"];

interface Props {
  /** Null: a new one. */
  item: ShelfItem | undefined;
  onKept: (item: ShelfItem, isBeside: boolean) => void;
  onLeave: () => void;
}

/** What is known of a player, to be written and changed. */
export function PlayerForm({ item, onKept, onLeave }: Props) {
  const stands = useQuery({
    queryKey: ["player", item?.id, item?.version],
    queryFn: ({ signal }) => player(item!.id, signal),
    enabled: item !== undefined,
    staleTime: Infinity,
  });
  if (item && !stands.data) {
    return <p className="pencil" role="status">{stands.error?.message}</p>;
  }
  return <Form item={item} told={stands.data} onKept={onKept} onLeave={onLeave} />;
}

function Form({ item, told, onKept, onLeave }: Props & { told: PlayerTold | undefined }) {
  const [name, setName] = useState(told?.player.name ?? "");
  const [notes, setNotes] = useState(told?.player.notes ?? "");
  const [words, setWords] = useState(() => new Map((told?.player.said ?? [{ word: "span", value: "205" }]).map((s) => [s.word, s.value])));
  const [fault, setFault] = useState<string>();
  const said = { name, notes, said: [...words].filter(([, v]) => v !== undefined).map(([word, value]) => ({ word, value })) };
  const [sought] = useDebouncedValue(JSON.stringify({ ...said, name: name.trim() || "?" }), TYPING_PAUSE);
  const tried = useQuery({
    queryKey: ["tried", sought],
    queryFn: ({ signal }) => tryPlayer(JSON.parse(sought), signal),
    staleTime: Infinity,
    placeholderData: keepPreviousData,
  });

  function put(word: string, value: string | undefined) {
    setWords((now) => {
      const next = new Map(now);
      if (value === undefined) next.delete(word);
      else next.set(word, value);
      return next;
    });
  }
  const putAll = (found: HandsSaid[]) => found.forEach(({ word, value }) => put(word, value));
  const line = (word: string, label: string, hint: string) => (
    <label>
      {label}
      <input className="line short" placeholder={hint} maxLength={30} value={words.get(word) ?? ""} onChange={(e) => put(word, e.currentTarget.value || undefined)} />
    </label>
  );
  const speeds = [...words].filter(([word]) => /leaps|strokes/.test(word));

  return (
    <form
      className="unfolded"
      onSubmit={(event) => {
        event.preventDefault();
        keepPlayer({ ...said, name: name.trim() }, item).then(
          (saved) => onKept(saved.item, saved.beside !== null && saved.beside !== undefined),
          (refusal: Error) => setFault(refusal.message),
        );
      }}
      onKeyDown={(event) => event.key === "Escape" && onLeave()}
    >
      <p>
        <label>
          {says.name}
          <input className="line" autoFocus required maxLength={80} value={name} onChange={(e) => setName(e.currentTarget.value)} />
        </label>
      </p>
      <p>
        {line("span", says.span, says.spanHint)}
        {line("left-span", says.left, "–")}
        {line("right-span", says.right, "–")}
      </p>
      <p>
        {line("index-span", says.index, says.indexHint)}
      </p>
      {HANDS.map((hand) => (
        <p key={hand} role="group" aria-label={says.without(hand)}>
          {says.fingers(hand)}
          {FINGERS.map((finger) => {
            const word = `${hand}-without`;
            const without = (words.get(word) ?? "").split(" ").filter(Boolean);
            const next = FINGERS.filter((f) => (f === finger ? !without.includes(f) : without.includes(f)));
            return (
              <label key={finger} className="tick">
                <input type="checkbox" checked={without.includes(finger)} onChange={() => put(word, next.join(" ") || undefined)} />
                {finger}
              </label>
            );
          })}
        </p>
      ))}
      <p>
        <label>
          {says.weaker}
          <select className="word" value={words.get("weaker") ?? ""} onChange={(e) => put("weaker", e.currentTarget.value || undefined)}>
            <option value="">{says.neither}</option>
            {HANDS.map((hand) => (
              <option key={hand}>{hand}</option>
            ))}
          </select>
        </label>
        {". "}
        <label>
          {says.keyboard}
          <select className="word" value={words.get("octave-width") ?? OCTAVES[0]} onChange={(e) => put("octave-width", e.currentTarget.value)}>
            {[...new Set([...OCTAVES, words.get("octave-width") ?? OCTAVES[0]!])].map((mm) => (
              <option key={mm} value={mm}>
                {says.octave(mm)}
              </option>
            ))}
          </select>
        </label>
      </p>
      <p>
        {says.wishes}
        {Object.entries(says.wish).map(([word, label]) => (
          <label key={word} className="tick">
            <input type="checkbox" checked={words.has(word)} onChange={(e) => put(word, e.currentTarget.checked ? "" : undefined)} />
            {label}
          </label>
        ))}
      </p>
      {speeds.length > 0 && (
        <p>
          {says.measured}
          {speeds.map(([word, value]) => says.speed(word, value)).join(", ")}.{" "}
          <button type="button" className="word aside" onClick={() => speeds.forEach(([word]) => put(word, undefined))}>
            {says.forget}
          </button>
        </p>
      )}
      <LeapTest octave={Number(words.get("octave-width") ?? OCTAVES[0])} onMeasured={putAll} />
      <p>
        <label>
          {says.notes}
          <br />
          <textarea className="line" rows={2} maxLength={10_000} value={notes} onChange={(e) => setNotes(e.currentTarget.value)} />
        </label>
      </p>
      <div className="pencil" role="status">
        {fault ?? tried.error?.message ? (
          <p className="fault">{fault ?? tried.error?.message}</p>
        ) : (
          tried.data && HANDS.map((hand) => <p key={hand}>{reach(hand, tried.data[hand as "left" | "right"])}</p>)
        )}
      </div>
      <p>
        <button type="submit" className="word">
          {says.save}
        </button>{" "}
        <button type="button" className="word aside" onClick={onLeave}>
          {says.leave}
        </button>
      </p>
    </form>
  );
}

const reach = (hand: string, one: PlayerTold["left"]) =>
  says.reach(hand, one.reach.map(({ manner, every }) => says.row(manner, every)).join(", "));
