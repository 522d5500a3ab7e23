import { useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { sentences } from "../sentences";
import { putAway, takeBack, type ShelfItem } from "../shelf/shelfApi";
import { PlayerForm } from "./PlayerForm";
import "./players.css";

const says = sentences.players;

interface Props {
  players: ShelfItem[];
  chosen: string | undefined;
  onChoose: (id: string) => void;
}

/** The players on the shelf: chosen, measured, changed, put away and taken back. */
export function Players({ players, chosen, onChoose }: Props) {
  const queries = useQueryClient();
  const [isOpen, setOpen] = useState(false);
  const [edited, setEdited] = useState<ShelfItem | "new">();
  const [away, setAway] = useState<ShelfItem>();
  const [said, setSaid] = useState<{ text: string; isFault: boolean }>();

  async function act(work: () => Promise<unknown>) {
    try {
      setSaid(undefined);
      await work();
    } catch (fault) {
      setSaid({ text: (fault as Error).message, isFault: true });
    }
    await queries.invalidateQueries({ queryKey: ["shelf"] });
  }

  async function onKept(item: ShelfItem, isBeside: boolean) {
    setEdited(undefined);
    setSaid(isBeside ? { text: says.beside, isFault: true } : undefined);
    await queries.invalidateQueries({ queryKey: ["shelf"] });
    // Of the same player, set again by what is known now.
    await queries.invalidateQueries({ queryKey: ["setting"] });
    onChoose(item.id);
  }

  const small = (word: string, label: string, onClick: () => void) => (
    <button type="button" className="word aside" aria-label={label} onClick={onClick}>
      {word}
    </button>
  );
  return (
    <section className="players" aria-label={says.about}>
      <p>
        <button type="button" className="word aside" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? says.close : says.open}
        </button>
      </p>
      {isOpen && (
        <>
          <div className="pencil" role="status">
            {said && <p className={said.isFault ? "fault" : undefined}>{said.text}</p>}
            {away && (
              <p>
                {says.gone(away.title)}
                {small(says.takeBack, says.takeBack, () =>
                  void act(async () => {
                    await takeBack(away.id);
                    setAway(undefined);
                  }),
                )}
              </p>
            )}
            {players.length === 0 && !away && <p>{says.none}</p>}
          </div>
          <ul className="pieces">
            {players.map((item) => (
              <li key={item.id}>
                <button type="button" className="word" aria-pressed={item.id === chosen} onClick={() => onChoose(item.id)}>
                  {says.choose(item.title)}
                </button>{" "}
                <span className="small">
                  {small(says.edit, `${says.edit}: ${item.title}`, () => setEdited(item))}{" "}
                  {small(says.putAway, `${says.putAway}: ${item.title}`, () =>
                    void act(async () => {
                      await putAway(item.id);
                      setAway(item);
                    }),
                  )}
                </span>
              </li>
            ))}
          </ul>
          {edited ? (
            <PlayerForm
              key={edited === "new" ? edited : edited.id}
              item={edited === "new" ? undefined : edited}
              onKept={(item, isBeside) => void onKept(item, isBeside)}
              onLeave={() => setEdited(undefined)}
            />
          ) : (
            <p>
              <button type="button" className="word" onClick={() => setEdited("new")}>
                {says.new}
              </button>
            </p>
          )}
        </>
      )}
    </section>
  );
}
