import { Popover } from "@mantine/core";
import { useId, useState } from "react";
import { sentences } from "./sentences";

/** One thing that a word can be changed to. */
export interface Option {
  label: string;
  /** What it means, in a few words. */
  about?: string;
  isChosen: boolean;
  choose: () => void;
}

interface Props {
  label: string;
  /** What it is about, above the choices. */
  about: string;
  options: Option[];
  /** The sign that stands behind it, never on a line of its own. */
  sign: string;
  /** Called when the choices are laid open. */
  onOpen?: () => void;
}

/** A word that is changed where it stands. */
export function Changeable({ label, about, options, sign, onOpen }: Props) {
  const [open, setOpen] = useState(false);
  const name = useId();
  const hasChosen = options.some((option) => option.isChosen);
  return (
    <span className="kept">
      <Popover
        opened={open}
        onChange={setOpen}
        position="bottom-start"
        trapFocus
        returnFocus
        hideDetached={false}
        transitionProps={{ duration: 0 }}
        shadow="none"
        radius={0}
      >
        <Popover.Target>
          <button
            type="button"
            className="word"
            aria-label={sentences.change(label)}
            onClick={() => {
              if (!open) onOpen?.();
              setOpen(!open);
            }}
          >
            {label}
          </button>
        </Popover.Target>
        <Popover.Dropdown className="slip" aria-label={about}>
          <fieldset className="choices">
            <legend>{about}</legend>
            {options.map((option) => (
              <label key={option.label} className="choice">
                <input
                  type="radio"
                  name={name}
                  checked={option.isChosen || (!hasChosen && option.label === label)}
                  data-autofocus={option.isChosen || undefined}
                  onChange={option.choose}
                  onKeyDown={(event) => event.key === "Enter" && setOpen(false)}
                />
                <span className="choice-label">{option.label}</span>
                {option.about && <span className="choice-about">{option.about}</span>}
              </label>
            ))}
          </fieldset>
        </Popover.Dropdown>
      </Popover>
      {sign}
    </span>
  );
}
