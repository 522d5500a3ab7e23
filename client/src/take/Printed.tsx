import { Changeable } from "../Changeable";
import type { Wishes } from "../api";
import { sentences } from "../sentences";

interface Props {
  wishes: Wishes;
  chordsOnly: boolean;
  onChange: (wishes: Partial<Wishes>) => void;
}

/** What is printed of the setting: a word for each thing that can be left out or put in. */
export function Printed({ wishes, chordsOnly, onChange }: Props) {
  const { lead, about, things } = sentences.printed;
  const shown = things.filter((thing) => !(chordsOnly && thing.ofTunes));
  return (
    <p className="printed">
      {lead}
      {shown.map(({ wish, about: subject, off, on }, i) => {
        const isOn = wishes[wish] === true;
        return (
          <span key={wish}>
            {i > 0 && " "}
            <Changeable
              label={isOn ? on : off}
              about={subject || about}
              sign={i === shown.length - 1 ? "." : ","}
              options={[
                { label: off, isChosen: !isOn, choose: () => onChange({ [wish]: false }) },
                { label: on, isChosen: isOn, choose: () => onChange({ [wish]: true }) },
              ]}
            />
          </span>
        );
      })}
    </p>
  );
}
