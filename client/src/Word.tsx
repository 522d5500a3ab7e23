import { Popover } from "@mantine/core";
import { useId, useState } from "react";
import { isChosen, type BriefWord, type Setting, type Wishes } from "./brief";
import { sentences } from "./sentences";

interface Props {
  word: BriefWord;
  /** The sign that stands behind it, never on a line of its own. */
  sign: string;
  wishes: Wishes;
  setting: Setting | undefined;
  onChange: (wishes: Partial<Wishes>) => void;
}

/** A word of the brief that can be changed where it stands; the score follows while the choices are walked through. */
export function Word({ word, sign, wishes, setting, onChange }: Props) {
  const [open, setOpen] = useState(false);
  const name = useId();
  const chosen = word.choices.find((choice) => isChosen(choice, wishes));
  const isOpenWish = chosen === undefined || Object.values(chosen.wishes).every((value) => value === null);
  const label = isOpenWish && setting && word.chosen ? word.chosen(setting) : (chosen?.label ?? word.choices[0]!.label);
  return (
    <>
      {word.before.replace(/^,/, "")}
      <span className="kept">
        <Popover
          opened={open}
          onChange={setOpen}
          position="bottom-start"
          trapFocus
          returnFocus
          transitionProps={{ duration: 0 }}
          shadow="none"
          radius={0}
        >
          <Popover.Target>
            <button type="button" className="word" aria-label={sentences.change(label)} onClick={() => setOpen(!open)}>
              {label}
            </button>
          </Popover.Target>
          <Popover.Dropdown className="slip" aria-label={word.about}>
            <fieldset className="choices">
              <legend>{word.about}</legend>
              {word.choices.map((choice) => (
                <label key={choice.label} className="choice">
                  <input
                    type="radio"
                    name={name}
                    checked={choice === chosen || (chosen === undefined && choice.label === label)}
                    data-autofocus={choice === chosen || undefined}
                    onChange={() => onChange(choice.wishes)}
                    onKeyDown={(event) => event.key === "Enter" && setOpen(false)}
                  />
                  <span className="choice-label">{choice.label}</span>
                  {choice.about && <span className="choice-about">{choice.about}</span>}
                </label>
              ))}
            </fieldset>
          </Popover.Dropdown>
        </Popover>
        {sign}
      </span>
    </>
  );
}
