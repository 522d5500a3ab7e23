import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import type { SettingMade } from "../api";
import { sentences } from "../sentences";
import { day } from "../shelf/Kept";
import { history, type ShelfItem } from "../shelf/shelfApi";
import { Pages } from "./Pages";
import { compare, versionMade } from "./versionApi";

const says = sentences.versions;
const NOW = "now";

/** Two versions beside each other, with the bars marked that they have otherwise. */
export function Compare({ made, item }: { made: SettingMade; item: ShelfItem }) {
  const kept = useQuery({ queryKey: ["shelf", "history", item.id], queryFn: ({ signal }) => history(item.id, signal) });
  const versions = (kept.data ?? []).map((v) => ({
    value: String(v.number),
    label: `${v.name ? `${v.name}, ` : ""}${says.version(v.number, day(v.saved))}`,
  }));
  const [left, setLeft] = useState(NOW);
  const [right, setRight] = useState<string>();
  const second = right ?? versions.find((v) => v.value !== String(item.version))?.value ?? versions[0]?.value;
  const [one, other] = [useVersion(item.id, left, made), useVersion(item.id, second, made)];
  const pair = useQuery({
    queryKey: ["compared", one.data?.id, other.data?.id],
    queryFn: ({ signal }) => compare(one.data!.id, other.data!.id, signal),
    enabled: one.data !== undefined && other.data !== undefined,
    staleTime: Infinity,
  });
  const fault = kept.error ?? one.error ?? other.error ?? pair.error;
  const pick = (label: string, value: string | undefined, onChange: (value: string) => void) => (
    <select className="word" aria-label={label} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
      <option value={NOW}>{says.now}</option>
      {versions.map((v) => (
        <option key={v.value} value={v.value}>
          {v.label}
        </option>
      ))}
    </select>
  );
  const bars = pair.data?.bars ?? [];
  return (
    <>
      <p>
        {says.compare}
        {pick(says.first, left, setLeft)}
        {says.with}
        {pick(says.second, second, setRight)}.
      </p>
      <div className="pencil" role="status">
        {fault ? <p className="fault">{fault.message}</p> : pair.data ? <p>{says.differing(bars, pair.data.same)}</p> : <p>{says.fetching}</p>}
      </div>
      {pair.data && one.data && other.data && (
        <div className="beside two">
          {([[one.data, "first"], [other.data, "second"]] as const).map(([version, side]) => (
            <div key={side}>
              <p className="pencil">{says.about(version.tune.setting.effort.overall, version.tune.setting.seconds)}</p>
              <Pages made={version} marked={bars.flatMap((bar) => bar[side] ?? [])} />
            </div>
          ))}
        </div>
      )}
    </>
  );
}

const useVersion = (id: string, chosen: string | undefined, made: SettingMade) =>
  useQuery({
    queryKey: ["version", id, chosen, chosen === NOW ? made.id : ""],
    queryFn: ({ signal }) => (chosen === NOW ? made : versionMade(id, Number(chosen), signal)),
    enabled: chosen !== undefined,
    staleTime: Infinity,
  });
