import { keepPreviousData, useQuery, useQueryClient } from "@tanstack/react-query";
import { useDebouncedValue } from "@mantine/hooks";
import { useEffect, useRef, useState } from "react";
import { printedKey, sentences } from "../sentences";
import { Backup } from "./Backup";
import { Item } from "./Item";
import { anything, findOnShelf, takeBack, type ShelfItem, type ShelfWish } from "./shelfApi";
import type { useKeeping } from "./useKeeping";

const words = sentences.shelf;
const TYPING_PAUSE = 250; // milliseconds
const efforts = Array.from({ length: 11 }, (_, i) => String(Math.max(1, 10 * i)));

interface Props {
  keeping: ReturnType<typeof useKeeping>;
  onClose: () => void;
}

/** What is kept, to be looked through and put on the desk again. */
export function Shelf({ keeping, onClose }: Props) {
  const queries = useQueryClient();
  const heading = useRef<HTMLHeadingElement>(null);
  const [wish, setWish] = useState(anything);
  const [sought] = useDebouncedValue(wish, TYPING_PAUSE);
  const [away, setAway] = useState<ShelfItem>();
  const [problem, setProblem] = useState<string>();
  const list = useQuery({
    queryKey: ["shelf", "list", sought],
    queryFn: ({ signal }) => findOnShelf(sought, signal),
    placeholderData: keepPreviousData,
  });
  useEffect(() => heading.current?.focus(), []);

  async function act(work: () => Promise<unknown>) {
    try {
      setProblem(undefined);
      await work();
    } catch (fault) {
      setProblem((fault as Error).message);
    }
    await queries.invalidateQueries({ queryKey: ["shelf"] });
  }
  const set = (change: Partial<ShelfWish>) => setWish({ ...wish, ...change });
  const found = list.data;
  const isEmpty = found?.count === 0 && JSON.stringify(sought) === JSON.stringify(anything);

  return (
    <section className="shelf" aria-labelledby="shelf-title">
      <h2 id="shelf-title" ref={heading} tabIndex={-1}>
        {words.title}
      </h2>
      <p>
        {words.lookFor}
        <input
          className="line"
          aria-label={words.lookForHint}
          placeholder={words.lookForHint}
          maxLength={200}
          value={wish.words}
          onChange={(event) => set({ words: event.currentTarget.value })}
        />
        {words.inKey}
        <Pick label={words.keyLabel} any={words.anyKey} choices={found?.keys} value={wish.key} onChange={(key) => set({ key })} />,{" "}
        <Pick label={words.metreLabel} any={words.anyMetre} choices={found?.metres} value={wish.metre} onChange={(metre) => set({ metre })} />
        {words.from}
        <Pick label={words.easiestLabel} any="1" choices={efforts.slice(1)} value={wish.easiest} onChange={(easiest) => set({ easiest })} />
        {words.to}
        <Pick label={words.hardestLabel} any="100" choices={efforts.slice(1, -1)} value={wish.hardest} onChange={(hardest) => set({ hardest })} />
        {words.tagged}
        <Pick label={words.tagLabel} any={words.anyTag} choices={found?.tags} value={wish.tag} onChange={(tag) => set({ tag })} />.
      </p>
      <div className="pencil" role="status">
        {(problem ?? list.error?.message) && <p className="fault">{problem ?? list.error?.message}</p>}
        {away && (
          <p>
            {words.gone(away.title)}
            <button
              type="button"
              className="word"
              onClick={() =>
                void act(async () => {
                  await takeBack(away.id);
                  setAway(undefined);
                })
              }
            >
              {words.takeBack}
            </button>
            .
          </p>
        )}
        {found && (
          <p>
            {found.count > 0 ? words.count(found.count) : isEmpty ? words.empty : wish.deleted ? words.noneAway : words.nothing}{" "}
            {found.count > found.items.length && words.more(found.items.length)}
          </p>
        )}
      </div>
      <ul className="pieces">
        {found?.items.map((item) => (
          <Item key={item.id} item={item} keeping={keeping} act={act} onAway={setAway} />
        ))}
      </ul>
      <p>
        <button type="button" className="word aside" onClick={() => set({ deleted: !wish.deleted })}>
          {wish.deleted ? words.showStanding : words.showAway}
        </button>
      </p>
      <Backup act={act} />
      <p>
        <button type="button" className="word aside" onClick={onClose}>
          {words.close}
        </button>
      </p>
    </section>
  );
}

interface PickProps {
  label: string;
  any: string;
  choices: string[] | undefined;
  value: string;
  onChange: (value: string) => void;
}

// A word of the sentence that can be another one.
function Pick({ label, any, choices, value, onChange }: PickProps) {
  return (
    <select className="word" aria-label={label} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
      <option value="">{any}</option>
      {choices?.map((choice) => (
        <option key={choice} value={choice}>
          {printedKey(choice)}
        </option>
      ))}
    </select>
  );
}
