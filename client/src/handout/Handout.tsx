import { useDebouncedValue } from "@mantine/hooks";
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import type { SettingMade } from "../api";
import { sentences } from "../sentences";
import { bars as fetchBars } from "../spots/spotApi";
import { handOut, handoutAddress, type HandoutWanted } from "./handoutApi";
import { Items } from "./Items";
import { Sheet } from "./Sheet";
import { useChosenBars } from "./useChosenBars";
import "./handout.css";

const says = sentences.handout;
const TYPING_PAUSE = 400; // milliseconds
const first: HandoutWanted = { items: ["score"], paper: "a4", free: false, fingering: false, oneSystem: false };

/** A page for a pupil: bars and items of one’s choice, looked at while they are chosen. */
export function Handout({ made }: { made: SettingMade }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <section className="handout" aria-label={says.title}>
      <p>
        {says.lead}
        <button type="button" className="word" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? says.close : says.open}
        </button>
        .
      </p>
      {isOpen && <Choose made={made} />}
    </section>
  );
}

function Choose({ made }: { made: SettingMade }) {
  const { data } = useQuery({ queryKey: ["bars", made.id], queryFn: ({ signal }) => fetchBars(made.id, signal), staleTime: Infinity });
  const all = data?.bars;
  const [wanted, setWanted] = useState<HandoutWanted>(first);
  const change = (next: Partial<HandoutWanted>) => setWanted((now) => ({ ...now, ...next }));
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  useChosenBars(all, (bars) => change({ bars }));
  // The first four full bars are enough to begin with.
  const usual = all && all.length > 0 ? `${all[Math.min(1, all.length - 1)]!.number}-${all[Math.min(4, all.length - 1)]!.number}` : undefined;
  const bars = wanted.bars ?? usual;
  const [sought] = useDebouncedValue(JSON.stringify(complete({ ...wanted, bars })), TYPING_PAUSE);
  const hasItems = (wanted.items ?? []).length > 0;
  const sheet = useQuery({
    queryKey: ["handout", made.id, sought],
    queryFn: ({ signal }) => handOut(made.id, JSON.parse(sought) as HandoutWanted, signal),
    enabled: bars !== undefined && hasItems,
    staleTime: Infinity,
    placeholderData: keepPreviousData,
  });
  const page = sheet.error || !hasItems ? undefined : sheet.data;

  return (
    <>
      <p>
        <label>
          {says.bars}
          <input ref={field} className="line short" value={bars ?? ""} maxLength={20} onChange={(e) => change({ bars: e.currentTarget.value })} />
        </label>
        {says.on}
        <select className="word" aria-label={says.paper} value={wanted.paper ?? "a4"} onChange={(e) => change({ paper: e.currentTarget.value })}>
          <option value="a4">A4</option>
          <option value="letter">Letter</option>
        </select>
        . <span className="pencil">{says.click}</span>
      </p>
      <Items wanted={wanted} onChange={change} leftHandOnly={made.tune.setting.leftHandOnly === true} />
      <div className="pencil" role="status">
        {!hasItems ? <p>{says.nothing}</p> : sheet.error ? <p className="fault">{sheet.error.message}</p> : sheet.isFetching && <p>{says.making}</p>}
      </div>
      {page && (
        <>
          <p>
            {says.take}
            {(["pdf", "svg", "png"] as const).map((format, i) => (
              <span key={format}>
                {["", ", ", says.or][i]}
                <a className="word" href={handoutAddress(page.id, format)} download>
                  {format.toUpperCase()}
                </a>
              </span>
            ))}
            .
          </p>
          <Sheet svg={page.svg} label={says.sheet(made.tune.title, bars ?? "")} isWorking={sheet.isFetching} />
        </>
      )}
    </>
  );
}

// Words that are empty say nothing; a pupil without a name is a line to write on.
function complete(wanted: HandoutWanted): HandoutWanted {
  return {
    ...wanted,
    text: wanted.items?.includes("text") ? wanted.text : null,
    credit: wanted.credit?.trim() ? wanted.credit : null,
  };
}
