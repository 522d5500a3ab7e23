import { sentences } from "../sentences";
import type { HandoutWanted } from "./handoutApi";

const says = sentences.handout;
const LEVELS = [1, 2, 3, 4, 5, 6];

interface Props {
  wanted: HandoutWanted;
  onChange: (change: Partial<HandoutWanted>) => void;
  leftHandOnly: boolean;
}

/** What stands on a hand-out, from the top; what a thing needs to know is asked beside it. */
export function Items({ wanted, onChange, leftHandOnly }: Props) {
  const items = wanted.items ?? [];
  const has = (name: string) => items.includes(name);
  const toggle = (name: string) =>
    onChange({ items: says.items.map(([item]) => item).filter((item) => (item === name ? !has(item) : has(item))) });
  const asked: Record<string, React.ReactNode> = {
    levels: (
      <span role="group" aria-label={says.levels}>
        {LEVELS.map((level) => {
          const levels = wanted.levels ?? [];
          return (
            <label key={level} className="tick">
              <input
                type="checkbox"
                checked={levels.includes(level)}
                onChange={() => onChange({ levels: levels.includes(level) ? levels.filter((l) => l !== level) : [...levels, level] })}
              />
              {level}
            </label>
          );
        })}
      </span>
    ),
    keyboard: (
      <label>
        {says.keyboard}
        <input
          className="line short"
          maxLength={20}
          placeholder={says.first}
          onChange={(e) => onChange({ keyboard: e.currentTarget.value.split(/[ ,]+/).filter(Boolean) })}
        />
      </label>
    ),
    text: (
      <textarea
        className="line"
        aria-label={says.text}
        rows={2}
        maxLength={2000}
        value={wanted.text ?? ""}
        onChange={(e) => onChange({ text: e.currentTarget.value })}
      />
    ),
    staves: (
      <select className="word" aria-label={says.staves} value={wanted.staves ?? 2} onChange={(e) => onChange({ staves: Number(e.currentTarget.value) })}>
        {[1, 2, 3, 4, 5, 6].map((n) => (
          <option key={n} value={n}>
            {says.systems(n)}
          </option>
        ))}
      </select>
    ),
  };
  const tick = (name: "fingering" | "oneSystem" | "free") => (
    <label className="tick">
      <input type="checkbox" checked={wanted[name] === true} onChange={(e) => onChange({ [name]: e.currentTarget.checked })} />
      {says[name]}
    </label>
  );
  return (
    <>
      <fieldset className="choices">
        <legend>{says.choose}</legend>
        {says.items
          .filter(([name]) => !(leftHandOnly && (name === "hands" || name === "plain")))
          .map(([name, label, about]) => (
            <div key={name} className="item">
              <label className="tick">
                <input type="checkbox" checked={has(name)} onChange={() => toggle(name)} />
                {label}
              </label>{" "}
              {has(name) && asked[name] ? asked[name] : <span className="choice-about">{about}</span>}
            </div>
          ))}
      </fieldset>
      <p>
        {tick("fingering")} {tick("oneSystem")}
      </p>
      <p>
        <label className="tick">
          <input
            type="checkbox"
            checked={typeof wanted.pupil === "string"}
            onChange={(e) => onChange({ pupil: e.currentTarget.checked ? "" : null })}
          />
          {says.forPupil}
        </label>{" "}
        {typeof wanted.pupil === "string" && (
          <input
            className="line"
            aria-label={says.pupil}
            placeholder={says.nameLine}
            maxLength={80}
            value={wanted.pupil}
            onChange={(e) => onChange({ pupil: e.currentTarget.value })}
          />
        )}
      </p>
      <p>
        <label>
          {says.credit}
          <input
            className="line"
            maxLength={300}
            placeholder={says.creditHint}
            value={wanted.credit ?? ""}
            onChange={(e) => onChange({ credit: e.currentTarget.value })}
          />
        </label>{" "}
        {tick("free")}
      </p>
    </>
  );
}
