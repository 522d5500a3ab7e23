import type { useKeeping } from "./useKeeping";
import { copyVersion, takeAgain } from "./shelfApi";
import { sentences } from "../sentences";

const words = sentences.shelf;

export const clock = (instant: string) =>
  new Date(instant).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });

export const day = (instant: string) => {
  const at = new Date(instant);
  return at.toDateString() === new Date().toDateString()
    ? words.today(clock(instant))
    : words.dayAndTime(at.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" }), clock(instant));
};

interface Props {
  keeping: ReturnType<typeof useKeeping>;
  isOpen: boolean;
  onShelf: () => void;
}

/** Says that the desk is kept, leads to the shelf, and asks where two pages went apart. */
export function Kept({ keeping, isOpen, onShelf }: Props) {
  const { item, conflict, problem } = keeping;
  const shelf = (
    <button type="button" className="word" aria-expanded={isOpen} onClick={onShelf}>
      {words.theShelf}
    </button>
  );
  return (
    <div className="kept-line pencil" role="status" data-kept={keeping.isKept}>
      {conflict ? (
        <Apart keeping={keeping} />
      ) : (
        <p>
          {problem && <span className="fault">{words.notKept(problem)} </span>}
          {item ? (
            <>
              {words.kept(clock(item.saved))}
              {shelf}.
            </>
          ) : (
            <>
              {words.take}
              {shelf}.
            </>
          )}
        </p>
      )}
    </div>
  );
}

// Two pages changed one arrangement: both are kept, and one of them goes on here.
function Apart({ keeping }: { keeping: Props["keeping"] }) {
  const { item, beside } = keeping.conflict!;
  const choices: [string, () => Promise<unknown>][] = [
    [words.mine, async () => keeping.goOn((await takeAgain(item.id, beside!.number, item.version)).item)],
    [words.theirs, () => keeping.open(item.id)],
    [words.both, async () => keeping.goOn(await copyVersion(item.id, beside!.number))],
  ];
  return (
    <div className="apart">
      <p>{words.apart(clock(item.saved))}</p>
      <ul>
        {choices.map(([label, choose]) => (
          <li key={label}>
            <button type="button" className="word" onClick={() => void choose()}>
              {label}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
