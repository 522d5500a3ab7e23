import { useQuery } from "@tanstack/react-query";
import { sentences } from "../sentences";
import type { Heard } from "../sound/plan";
import { Picture } from "../spots/Picture";
import { drillFor, type SeenRemark } from "./takeApi";

interface Props {
  setting: string;
  take: string;
  remark: SeenRemark;
  hear: (heard: Heard) => void;
}

/** The drill that answers a remark, engraved, with how to practise it. */
export function Drill({ setting, take, remark, hear }: Props) {
  const { kind, firstBar } = remark;
  const { data, error } = useQuery({
    queryKey: ["drill", setting, take, kind, firstBar],
    queryFn: ({ signal }) => drillFor(setting, take, kind, firstBar, signal),
    staleTime: Infinity,
  });
  const says = sentences.hearing;
  if (error) return <p className="pencil fault" role="alert">{error.message}</p>;
  if (data === undefined) return <p className="pencil" role="status">{says.lookingForDrill}</p>;
  if (data === null) return <p className="pencil" role="status">{says.noDrill}</p>;
  return (
    <div className="drill" role="group" aria-label={data.name}>
      <p>
        <b>{data.name}</b> <span className="pencil">{data.claim}</span>
      </p>
      <Picture svg={data.picture} label={data.name} />
      <ul>
        {data.how.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <button type="button" className="word" onClick={() => hear(data.heard)}>
        {says.hearDrill}
      </button>
    </div>
  );
}
