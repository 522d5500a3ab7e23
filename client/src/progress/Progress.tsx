import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { sentences } from "../sentences";
import { Piece } from "./Piece";
import { forget, progress, tableAddress, type PlayerProgress } from "./progressApi";
import "./progress.css";

const words = sentences.progress;

/** How players come on: a word that opens it, and what lies there then. */
export function Progress() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <p>
        <button type="button" className="word aside" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? words.close : words.open}
        </button>
      </p>
      {isOpen && <Players />}
    </>
  );
}

// A teacher sees everybody in short, and one of them at length.
function Players() {
  const queries = useQueryClient();
  const heading = useRef<HTMLHeadingElement>(null);
  const [chosen, setChosen] = useState("");
  const [said, setSaid] = useState<{ text: string; isFault: boolean }>();
  const { data, error } = useQuery({ queryKey: ["progress"], queryFn: ({ signal }) => progress(signal) });
  useEffect(() => heading.current?.focus(), []);
  const players = data?.players ?? [];
  const one = players.find((p) => keyOf(p) === chosen);

  async function throwAway(player: PlayerProgress) {
    try {
      setSaid({ text: (await forget(player.id!)).message, isFault: false });
      setChosen("");
      heading.current?.focus();
    } catch (fault) {
      setSaid({ text: (fault as Error).message, isFault: true });
    }
    await queries.invalidateQueries();
  }

  return (
    <section className="progress" aria-labelledby="progress-title">
      <h2 id="progress-title" ref={heading} tabIndex={-1}>
        {words.title}
      </h2>
      <div className="pencil" role="status">
        {error && <p className="fault">{error.message}</p>}
        {said && <p className={said.isFault ? "fault" : ""}>{said.text}</p>}
        {data && players.length === 0 && <p>{words.none}</p>}
      </div>
      {players.length > 0 && (
        <p>
          {words.of}
          <select className="word" aria-label={words.whose} value={one ? chosen : ""} onChange={({ target }) => setChosen(target.value)}>
            <option value="">{words.everybody}</option>
            {players.map((p) => (
              <option key={keyOf(p)} value={keyOf(p)}>
                {nameOf(p)}
              </option>
            ))}
          </select>
          {words.asTable}
          <a className="word" href={tableAddress(one?.id ?? null)} download>
            {words.table}
          </a>
          .
        </p>
      )}
      {one ? <One key={keyOf(one)} player={one} onThrowAway={() => void throwAway(one)} /> : <All players={players} onChoose={setChosen} />}
    </section>
  );
}

const keyOf = (player: PlayerProgress) => player.id ?? "nobody";
const nameOf = (player: PlayerProgress) => player.name || words.nobody;

function All({ players, onChoose }: { players: PlayerProgress[]; onChoose: (key: string) => void }) {
  return (
    <ul className="players">
      {players.map((player) => (
        <li key={keyOf(player)}>
          <button type="button" className="word" onClick={() => onChoose(keyOf(player))}>
            {nameOf(player)}
          </button>
          {words.inShort(player.takes, player.pieces[0]?.title)}
          {player.due.length > 0 && <Due due={player.due} />}
        </li>
      ))}
    </ul>
  );
}

function Due({ due }: { due: string[] }) {
  return (
    <p className="pencil">
      {words.due}
      {due.join("; ")}.
    </p>
  );
}

function One({ player, onThrowAway }: { player: PlayerProgress; onThrowAway: () => void }) {
  const [isSure, setSure] = useState(false);
  return (
    <>
      {player.due.length > 0 ? <Due due={player.due} /> : <p className="pencil">{words.nothingDue}</p>}
      {player.pieces.map((piece) => (
        <Piece key={piece.title + piece.first} piece={piece} />
      ))}
      {player.pieces.length === 0 && <p>{words.noTakes}</p>}
      {player.id !== null && (
        <p>
          {isSure ? (
            <>
              {words.sure(player.name)}
              <button type="button" className="word" onClick={onThrowAway}>
                {words.yes}
              </button>
              {words.or}
              <button type="button" className="word" autoFocus onClick={() => setSure(false)}>
                {words.no}
              </button>
              .
            </>
          ) : (
            <button type="button" className="word aside" onClick={() => setSure(true)}>
              {words.throwAway(player.name)}
            </button>
          )}
        </p>
      )}
    </>
  );
}
