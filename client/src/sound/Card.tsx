import { useState } from "react";
import { Changeable, type Option } from "../Changeable";
import { sentences } from "../sentences";
import type { Heard, Rehearsal } from "./plan";
import type { usePlayer } from "./usePlayer";

const SPEEDS = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1];

/** The rehearsal card: one sentence that says which bars, which hand, how fast. */
export function Card({ player, heard }: { player: ReturnType<typeof usePlayer>; heard: Heard }) {
  return (
    <section className="card" aria-labelledby="card-title">
      <h2 id="card-title" tabIndex={-1}>
        {sentences.cardTitle}
      </h2>
      <p className="sentence">
        <RehearsalWords player={player} heard={heard} lead={sentences.cardBars} />{" "}
        {"requestMIDIAccess" in navigator && <OnInstrument player={player} />}
      </p>
      <p className="rights">{sentences.keys}</p>
      <p className="rights">
        {sentences.loudness} {sentences.pauses}
      </p>
    </section>
  );
}

interface Words {
  player: ReturnType<typeof usePlayer>;
  heard: Heard;
  lead: string;
  /** It is played by a person, once; more words follow. */
  isTaken?: boolean;
  /** It is tapped: always counted in and to a click. */
  isTapped?: boolean;
}

/** The words of a rehearsal, each changed where it stands. */
export function RehearsalWords({ player, heard, lead, isTaken = false, isTapped = false }: Words) {
  const { rehearsal, change } = player;
  const bars = [...new Map(heard.bars.map((bar) => [bar.id, bar])).values()];
  const [from, to] = [rehearsal.from ?? bars[0]?.id ?? "", rehearsal.to ?? bars.at(-1)?.id ?? ""];
  const place = (id: string) => bars.findIndex((bar) => bar.id === id);
  const numbers = bars.map((bar) => (
    <option key={bar.id} value={bar.id}>
      {sentences.barNumber(bar.number)}
    </option>
  ));

  function options<K extends keyof Rehearsal>(key: K, labels: [Rehearsal[K], string][], now = rehearsal[key]): Option[] {
    return labels.map(([value, label]) => ({ label, isChosen: now === value, choose: () => change({ [key]: value }) }));
  }
  const players = isTaken ? (["both", "right", "left"] as const) : (["both", "right", "left", "tune"] as const);
  const hands = options("hands", players.map((h) => [h, sentences.hands[h]]), isTaken && rehearsal.hands === "tune" ? "right" : rehearsal.hands);
  const speeds = options("speed", SPEEDS.map((s) => [s, s === 1 ? sentences.speed.own : s === 0.5 ? sentences.speed.half : sentences.speed.of(s)]));
  const counts = options("countIn", [[0, sentences.countIn.none], [1, sentences.countIn.one], [2, sentences.countIn.two]]);
  const clicks = options("click", [[false, sentences.click.none], [true, sentences.click.on]]);
  const loops = options("loop", [[false, sentences.loop.once], [true, sentences.loop.again]]);
  const chosen = (list: Option[]) => list.find((o) => o.isChosen)!.label;

  return (
    <>
      {lead}
      <select
        className="word"
        aria-label={sentences.firstBar}
        value={from}
        onChange={({ target }) => change({ from: target.value, to: place(target.value) > place(to) ? target.value : to })}
      >
        {numbers}
      </select>
      {sentences.cardTo}
      <span className="kept">
        <select
          className="word"
          aria-label={sentences.lastBar}
          value={to}
          onChange={({ target }) => change({ to: target.value, from: place(target.value) < place(from) ? target.value : from })}
        >
          {numbers}
        </select>
        ,
      </span>{" "}
      <Changeable label={chosen(hands)} about={sentences.hands.about} options={hands} sign="," />{" "}
      <Changeable label={chosen(speeds)} about={sentences.speed.about} options={speeds} sign="," />
      {!isTapped && (
        <>
          {" "}
          <Changeable label={chosen(counts)} about={sentences.countIn.about} options={counts} sign="," />{" "}
          <Changeable label={chosen(clicks)} about={sentences.click.about} options={clicks} sign="," />
        </>
      )}
      {!isTaken && (
        <>
          {" "}
          <Changeable label={chosen(loops)} about={sentences.loop.about} options={loops} sign={"requestMIDIAccess" in navigator ? "," : "."} />
        </>
      )}
    </>
  );
}

// The piano of the page, or an instrument that is connected.
function OnInstrument({ player }: { player: ReturnType<typeof usePlayer> }) {
  const [found, setFound] = useState<{ id: string; name: string }[]>();
  const look = async () => {
    try {
      setFound(await (await import("./midiOut")).instruments());
    } catch {
      setFound([]);
    }
  };
  const options: Option[] = [
    {
      label: sentences.instrument.here,
      about: found?.length === 0 ? sentences.instrument.none : undefined,
      isChosen: player.midi === null,
      choose: () => player.playOn(null),
    },
    ...(found ?? []).map(({ id, name }) => ({
      label: sentences.instrument.on(name),
      isChosen: player.midi === id,
      choose: () => player.playOn(id),
    })),
  ];
  const label = options.find((o) => o.isChosen)?.label ?? sentences.instrument.here;
  return <Changeable label={label} about={sentences.instrument.about} options={options} sign="." onOpen={() => void look()} />;
}
