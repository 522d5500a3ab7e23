import { sentences } from "../sentences";
import type { PieceReport } from "./progressApi";

const words = sentences.progress;

/** A piece over the weeks, and what was practised of it. */
export function Piece({ piece }: { piece: PieceReport }) {
  return (
    <article>
      <h3>{piece.title}</h3>
      <p>{words.piece(piece.takes, piece.first, piece.last, piece.tempoReached, piece.askedTempo)}</p>
      <Table
        caption={words.weeks}
        head={words.weekHead}
        rows={piece.weeks.map((w) => [words.day(w.week), words.onDays(w.takes, w.days), words.share(w.cleanness), words.tempo(w.tempoReached), words.uneven(w.unevenness)])}
      />
      <Table
        caption={words.items}
        head={words.itemHead}
        rows={piece.items.map((i) => [i.what, words.day(i.last), words.share(i.cleanness), words.tempo(i.tempoReached), words.dueOn(i.due, i.isDue)])}
      />
    </article>
  );
}

function Table({ caption, head, rows }: { caption: string; head: string[]; rows: string[][] }) {
  return (
    <div className="table" role="region" aria-label={caption} tabIndex={0}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {head.map((cell) => (
              <th key={cell} scope="col">
                {cell}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([first, ...rest], i) => (
            <tr key={i}>
              <th scope="row">{first}</th>
              {rest.map((cell, k) => (
                <td key={k}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
