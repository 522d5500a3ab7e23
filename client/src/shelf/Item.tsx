import { useQuery } from "@tanstack/react-query";
import { useState, type ReactNode } from "react";
import { sentences } from "../sentences";
import { day } from "./Kept";
import { history, nameVersion, purge, putAway, rename, tag, takeAgain, takeBack, type ShelfItem, type ShelfVersion } from "./shelfApi";
import type { useKeeping } from "./useKeeping";

const words = sentences.shelf;
type Act = (work: () => Promise<unknown>) => Promise<void>;
type Unfolded = "title" | "tags" | "versions" | "away" | undefined;

interface Props {
  item: ShelfItem;
  keeping: ReturnType<typeof useKeeping>;
  act: Act;
  onAway: (item: ShelfItem) => void;
}

/** A piece on the shelf, and what can be done with it. */
export function Item({ item, keeping, act, onAway }: Props) {
  const [unfolded, setUnfolded] = useState<Unfolded>();
  const isOnDesk = keeping.item?.id === item.id;
  const refold = (next: Unfolded) => setUnfolded(unfolded === next ? undefined : next);
  const change = (work: () => Promise<ShelfItem>) =>
    void act(async () => {
      const next = await work();
      setUnfolded(undefined);
      if (isOnDesk) keeping.goOn(next);
    });
  const small = (word: string, onClick: () => void, isOpen?: boolean) => (
    <button type="button" className="word aside" aria-label={words.of(word, item.title)} aria-expanded={isOpen} onClick={onClick}>
      {word}
    </button>
  );
  const away = () =>
    void act(async () => {
      await putAway(item.id);
      if (isOnDesk) keeping.begin();
      onAway(item);
    });

  return (
    <li>
      {item.kind === "arrangement" || item.kind === "tune" ? (
        <button type="button" className="word" onClick={() => void act(() => keeping.open(item.id))}>
          {item.title}
        </button>
      ) : (
        words.kind(item.kind, item.title)
      )}{" "}
      <span className="pencil">
        {words.about(item.key, item.metre, item.effort, day(item.saved))}
        {item.tags.length > 0 && `, ${words.tags(item.tags)}`}.
      </span>{" "}
      {item.deleted ? (
        <span className="small">
          {small(words.takeBack, () => void act(() => takeBack(item.id)))} {small(words.throwAway, () => refold("away"), unfolded === "away")}
        </span>
      ) : (
        <span className="small">
          {small(words.rename, () => refold("title"), unfolded === "title")} {small(words.tag, () => refold("tags"), unfolded === "tags")}{" "}
          {small(words.versions, () => refold("versions"), unfolded === "versions")}{" "}
          {small(words.putAway, () => refold("away"), unfolded === "away")}
        </span>
      )}
      {unfolded === "title" && (
        <Line label={words.newTitle} value={item.title} onSave={(title) => change(() => rename(item.id, title))} onLeave={() => setUnfolded(undefined)} />
      )}
      {unfolded === "tags" && (
        <Line
          label={words.newTags}
          value={item.tags.join(", ")}
          onSave={(line) => change(() => tag(item.id, split(line)))}
          onLeave={() => setUnfolded(undefined)}
        />
      )}
      {unfolded === "versions" && <Versions item={item} keeping={keeping} act={act} />}
      {unfolded === "away" &&
        (item.deleted ? (
          <Sure question={words.sureForGood(item.title)} yes={words.yesForGood} onYes={() => void act(() => purge(item.id))} onNo={() => setUnfolded(undefined)} />
        ) : (
          <Sure question={words.sure(item.title)} yes={words.yesPutAway} onYes={away} onNo={() => setUnfolded(undefined)} />
        ))}
    </li>
  );
}

const split = (line: string) => line.split(",").map((word) => word.trim()).filter(Boolean);

/** A question before something is done. */
export function Sure({ question, yes, onYes, onNo }: { question: ReactNode; yes: string; onYes: () => void; onNo: () => void }) {
  return (
    <p className="unfolded">
      {question}{" "}
      <button type="button" className="word" autoFocus onClick={onYes}>
        {yes}
      </button>{" "}
      <button type="button" className="word aside" onClick={onNo}>
        {words.leave}
      </button>
    </p>
  );
}

interface LineProps {
  label: string;
  value: string;
  onSave: (value: string) => void;
  onLeave: () => void;
}

// One line to be written anew.
function Line({ label, value, onSave, onLeave }: LineProps) {
  const [text, setText] = useState(value);
  return (
    <form
      className="unfolded"
      onSubmit={(event) => {
        event.preventDefault();
        onSave(text.trim());
      }}
      onKeyDown={(event) => event.key === "Escape" && onLeave()}
    >
      <label>
        {label}{" "}
        <input className="line" maxLength={300} autoFocus value={text} onChange={(event) => setText(event.currentTarget.value)} />
      </label>{" "}
      <button type="submit" className="word">
        {words.save}
      </button>{" "}
      <button type="button" className="word aside" onClick={onLeave}>
        {words.leave}
      </button>
    </form>
  );
}

function Versions({ item, keeping, act }: Omit<Props, "onAway">) {
  const [named, setNamed] = useState<number>();
  const { data } = useQuery({ queryKey: ["shelf", "history", item.id], queryFn: ({ signal }) => history(item.id, signal) });
  const again = (version: ShelfVersion) =>
    void act(async () => {
      const saved = await takeAgain(item.id, version.number, item.version);
      if (keeping.item?.id === item.id && !saved.beside) await keeping.open(item.id);
    });
  const small = (word: string, version: ShelfVersion, onClick: () => void) => (
    <button type="button" className="word aside" aria-label={words.of(word, day(version.saved))} onClick={onClick}>
      {word}
    </button>
  );
  return (
    <ol className="unfolded">
      {data?.map((version) => (
        <li key={version.number} className="small">
          {version.name && <b>{version.name}, </b>}
          {words.about(version.key, version.metre, version.effort, day(version.saved))}
          {version.number === item.version ? `; ${words.holds}` : version.isBeside ? `; ${words.beside}` : ""}.{" "}
          {small(words.look, version, () => void act(() => keeping.open(item.id, version.number)))}{" "}
          {version.number !== item.version && small(words.again, version, () => again(version))}{" "}
          {small(words.nameIt, version, () => setNamed(version.number))}
          {named === version.number && (
            <Line
              label={words.versionName}
              value={version.name ?? ""}
              onSave={(name) =>
                void act(async () => {
                  await nameVersion(item.id, version.number, name || null);
                  setNamed(undefined);
                })
              }
              onLeave={() => setNamed(undefined)}
            />
          )}
        </li>
      ))}
    </ol>
  );
}
