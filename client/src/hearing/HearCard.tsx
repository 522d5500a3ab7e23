import { useQuery } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import { Changeable, type Option } from "../Changeable";
import { FileWord } from "../FileWord";
import { sentences } from "../sentences";
import { RehearsalWords } from "../sound/Card";
import type { Heard } from "../sound/plan";
import type { usePlayer } from "../sound/usePlayer";
import { putTakeAway, takesOf, type FileWish, type TakeItem } from "./takeApi";
import type { useTaking } from "./useTaking";

const PLAYER = "stridewright-player";
const SHOWN = 6; // takes

interface Props {
  taking: ReturnType<typeof useTaking>;
  player: ReturnType<typeof usePlayer>;
  heard: Heard;
  piece: string | undefined;
  /** Id of the take that is looked at. */
  shown: string | undefined;
  look: (take: string) => void;
  bring: (file: File, wish: FileWish) => void;
}

/** The card to be heard by: one sentence that says which bars, which hand, how fast, on what and by whom. */
export function HearCard({ taking, player, heard, piece, shown, look, bring }: Props) {
  const says = sentences.hearing;
  const keyboards = useKeyboards();
  const [choice, setChoice] = useState<string | null>();
  const [name, setName] = useState(() => localStorage.getItem(PLAYER) ?? "");
  // A keyboard where there is one; else the hands are tapped.
  const keyboard = choice !== undefined && (choice === null || keyboards?.some((k) => k.id === choice)) ? choice : (keyboards?.[0]?.id ?? null);
  const on: Option[] = [
    ...(keyboards ?? []).map(({ id, name }) => ({ label: says.on(name), isChosen: keyboard === id, choose: () => setChoice(id) })),
    {
      label: says.onTaps,
      about: keyboards?.length ? says.tapsAbout : says.noKeyboard,
      isChosen: keyboard === null,
      choose: () => setChoice(null),
    },
  ];
  const { rehearsal } = player;
  return (
    <section className="card" aria-labelledby="hear-title">
      <h2 id="hear-title">{says.title}</h2>
      <p className="sentence">
        <RehearsalWords player={player} heard={heard} lead={says.lead} isTaken isTapped={keyboard === null} />{" "}
        <Changeable label={on.find((o) => o.isChosen)!.label} about={says.onAbout} options={on} sign="," />{" "}
        <label>
          {says.as}
          <input
            className="word"
            value={name}
            size={Math.max(name.length, says.nobody.length)}
            maxLength={60}
            placeholder={says.nobody}
            autoComplete="off"
            onChange={({ target }) => {
              setName(target.value);
              localStorage.setItem(PLAYER, target.value);
            }}
          />
          .
        </label>
      </p>
      <p>
        <button
          type="button"
          className="word"
          disabled={taking.stage !== "ready"}
          onClick={() => void taking.begin(rehearsal, keyboard, { player: name.trim(), piece })}
        >
          {keyboard === null ? says.beginTaps : rehearsal.click || rehearsal.countIn > 0 ? says.beginCounted : says.begin}
        </button>
        {says.or}
        <FileWord
          accept=".mid,.midi"
          onFile={(file) => {
            const hand = rehearsal.hands === "both" ? null : rehearsal.hands === "tune" ? "right" : rehearsal.hands;
            bring(file, { from: rehearsal.from, to: rehearsal.to, hand, player: name.trim(), piece: piece ?? null });
          }}
        >
          {says.bring}
        </FileWord>
        .
      </p>
      {keyboard === null && (
        <p className="pencil">
          {says.late(taking.late)}{" "}
          <button type="button" className="word aside" onClick={() => void taking.check()}>
            {taking.late === undefined ? says.check : says.checkAgain}
          </button>
          .
        </p>
      )}
      {piece && <Takes piece={piece} shown={shown} look={look} />}
      <p className="rights">{says.kept}</p>
    </section>
  );
}

function Takes({ piece, shown, look }: { piece: string; shown: string | undefined; look: (take: string) => void }) {
  const says = sentences.hearing;
  const { data, refetch } = useQuery({ queryKey: ["takes", piece], queryFn: ({ signal }) => takesOf(piece, signal) });
  const [all, setAll] = useState(false);
  if (!data || data.length === 0) return null;
  const takes = all ? data : data.slice(0, SHOWN);
  return (
    <div className="takes">
      <h3>{says.takes}</h3>
      <ul>
        {takes.map((take) => (
          <li key={take.id} aria-current={take.id === shown || undefined}>
            <button type="button" className="word" onClick={() => look(take.id)}>
              {says.take(when(take), take.player)}
            </button>{" "}
            <span className="pencil">{says.takeAbout(take.range, take.hand, take.taps, take.right, take.asked, take.quartersPerMinute)}</span>{" "}
            <button
              type="button"
              className="word aside"
              aria-label={says.putAwayTake(when(take))}
              onClick={() => void putTakeAway(take.id).then(() => refetch())}
            >
              {sentences.shelf.putAway}
            </button>
          </li>
        ))}
      </ul>
      {data.length > takes.length && (
        <button type="button" className="word aside" onClick={() => setAll(true)}>
          {says.allTakes(data.length)}
        </button>
      )}
    </div>
  );
}

function when({ at }: TakeItem): string {
  const time = new Date(at);
  const clock = time.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit", second: "2-digit" });
  return time.toDateString() === new Date().toDateString()
    ? sentences.shelf.today(clock)
    : sentences.shelf.dayAndTime(time.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" }), clock);
}

// The keyboards that are connected now; undefined while nobody knows.
function useKeyboards() {
  const [found, setFound] = useState<{ id: string; name: string }[]>();
  useEffect(() => {
    let end: (() => void) | undefined;
    let isOver = false;
    void (async () => {
      try {
        const midi = await import("../sound/midiIn");
        const look = async () => setFound(await midi.keyboards());
        await look();
        if (!isOver) end = midi.onKeyboards(() => void look());
      } catch {
        setFound([]);
      }
    })();
    return () => {
      isOver = true;
      end?.();
    };
  }, []);
  return found;
}
