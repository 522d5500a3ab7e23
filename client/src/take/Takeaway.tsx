import { fileAddress, type SettingMade } from "../api";
import { sentences } from "../sentences";

/** Everything that can be taken away, as words. */
export function Takeaway({ made }: { made: SettingMade }) {
  const says = sentences.takeaway;
  const isOneHand = made.tune.setting.leftHandOnly;
  const word = (label: string, format: string, page?: number) => (
    <a key={label} className="word" href={fileAddress(made.id, format, page)} download>
      {label}
    </a>
  );
  const pages = Array.from({ length: made.pages }, (_, i) => i + 1);
  return (
    <>
      <p>
        {says.lead}
        {listed([
          word(says.score, "pdf"),
          word(says.large, "large-print"),
          word(says.reasons, "reasons"),
          ...(isOneHand ? [] : [word(says.right, "right-hand"), word(says.left, "left-hand")]),
        ])}
        {says.data}
        {listed([word("MusicXML", "musicxml"), word(says.mxl, "mxl"), word("MIDI", "midi"), word("WAV", "wav"), word(says.phone, "phone"), word(says.arrangement, "arrangement")])}.
      </p>
      <p>
        {says.pictures}
        {listed(["PNG", "SVG"].flatMap((kind) => pages.map((page) => word(says.pictureOf(kind, page, made.pages), kind.toLowerCase(), page))))}
        {". "}
        {says.all}
        {word(says.zip, "zip")}
        {says.or}
        <button type="button" className="word" onClick={() => window.print()}>
          {says.print}
        </button>
        .
      </p>
    </>
  );
}

const listed = (words: React.ReactElement[]) => words.map((word, i) => [i === 0 ? "" : i === words.length - 1 ? " or " : ", ", word]);
