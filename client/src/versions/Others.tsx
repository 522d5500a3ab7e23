import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import type { SettingMade } from "../api";
import { sentences } from "../sentences";
import type { SpotMade } from "../spots/spotApi";
import { Pages } from "./Pages";
import { otherSettings } from "./versionApi";

const says = sentences.versions;

/** Three whole settings of one brief beside each other: the one on the desk and two unlike it. */
export function Others({ made, onTake }: { made: SettingMade; onTake: (made: SpotMade) => void }) {
  // What was there when it was opened; taking one puts it away.
  const [here] = useState(made);
  const { data, error } = useQuery({
    queryKey: ["others", here.id],
    queryFn: ({ signal }) => otherSettings(here.id, signal),
    staleTime: Infinity,
  });
  const bars = here.tune.setting.bars;
  return (
    <>
      <div className="pencil" role="status">
        {error ? <p className="fault">{error.message}</p> : data ? data.length === 0 && <p>{says.none}</p> : <p>{says.making}</p>}
      </div>
      {data && data.length > 0 && (
        <ol className="beside three">
          <li>
            <h2>{says.here}</h2>
            <p className="pencil">{says.about(here.tune.setting.effort.overall, here.tune.setting.seconds)}</p>
            <Pages made={here} most={1} />
          </li>
          {data.map((other, i) => (
            <li key={other.made.setting.id}>
              <h2>{says.another(i + 2)}</h2>
              <p className="pencil">
                {says.about(other.made.setting.tune.setting.effort.overall, other.made.setting.tune.setting.seconds)}{" "}
                {says.unlike(Math.round(other.motif * bars), Math.round(other.bass * bars), bars)}
              </p>
              <p>
                <button type="button" className="word" onClick={() => onTake(other.made)}>
                  {says.take(i + 2)}
                </button>
              </p>
              <Pages made={other.made.setting} most={1} />
            </li>
          ))}
        </ol>
      )}
    </>
  );
}
