import { isChosen, type BriefWord, type Setting, type Wishes } from "./brief";
import { Changeable } from "./Changeable";

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
  const chosen = word.choices.find((choice) => isChosen(choice, wishes));
  const isOpenWish = chosen === undefined || Object.values(chosen.wishes).every((value) => value === null);
  const label = isOpenWish && setting && word.chosen ? word.chosen(setting) : (chosen?.label ?? word.choices[0]!.label);
  return (
    <>
      {word.before.replace(/^,/, "")}
      <Changeable
        label={label}
        about={word.about}
        sign={sign}
        options={word.choices.map((choice) => ({
          label: choice.label,
          about: choice.about,
          isChosen: choice === chosen,
          choose: () => onChange(choice.wishes),
        }))}
      />
    </>
  );
}
