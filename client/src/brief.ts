import type { components } from "./contract";
import { sentences } from "./sentences";

export type Wishes = components["schemas"]["BriefWishes"];
export type Setting = components["schemas"]["Setting"];

/** One thing that a word can be changed to. */
export interface Choice {
  label: string;
  /** What it means, in a few words. */
  about?: string;
  wishes: Partial<Wishes>;
}

/** A word of the brief's sentence. */
export interface BriefWord {
  name: string;
  /** What stands before it in the sentence. */
  before: string;
  about: string;
  choices: Choice[];
  /** What it says where the brief leaves it to the arranger. */
  chosen?: (setting: Setting) => string;
}

const rightLevels = [
  "the tune, one off-beat figure a phrase",
  "off-beat figures within the half bar",
  "ties over the middle of the bar",
  "ties over the bar line, thirds and sixths on accents",
  "octaves",
  "octaves with inner notes, crushed notes",
];
const leftLevels = [
  "single roots, the chord beside them",
  "root and fifth, leaps up to an octave",
  "full stride on single basses",
  "octaves on first beats, short runs",
  "octaves throughout, longer runs",
  "tenths, rolled where the hand asks",
];

const levels = (hand: "leftLevel" | "rightLevel", about: string[]): Choice[] =>
  about.map((words, i) => ({ label: sentences.level(i + 1), about: words, wishes: { [hand]: i + 1 } }));

const feels: Record<string, Choice> = {
  classic: { label: "a classic rag", about: "in 2/4, straight sixteenths", wishes: { feel: "classic" } },
  stride: { label: "stride", about: "in 4/4, swung eighths", wishes: { feel: "stride" } },
  waltz: { label: "a rag waltz", about: "in 3/4", wishes: { feel: "waltz" } },
  "six-eight": { label: "a six-eight march", about: "in 6/8", wishes: { feel: "six-eight" } },
};

/** The feels that a tune of this metre can have; chords alone can have any. */
const feelsOf = (metre: string, chordsOnly: boolean): Choice[] => {
  const names = chordsOnly
    ? Object.keys(feels)
    : metre === "3/4"
      ? ["waltz"]
      : metre === "6/8"
        ? ["six-eight", "classic"]
        : ["classic", "stride"];
  return names.map((name) => feels[name]!);
};

const tonics = ["C", "G", "D", "A", "E", "B", "F#", "Db", "Ab", "Eb", "Bb", "F"];
const printed = (tonic: string) => tonic.replace("b", "♭").replace("#", "♯");

/** The sentence, word by word, for a tune. */
export const briefWords = (metre: string, chordsOnly: boolean, players: { id: string; title: string }[] = []): BriefWord[] => [
  {
    name: "feel",
    before: chordsOnly ? "The left hand of " : "As ",
    about: "The manner",
    choices: feelsOf(metre, chordsOnly),
    chosen: (setting) => feels[setting.feel]?.label ?? setting.feel,
  },
  {
    name: "key",
    before: " in ",
    about: "The key",
    choices: [
      { label: sentences.ownKey, wishes: { key: null } },
      ...tonics.map((tonic) => ({ label: printed(tonic), wishes: { key: tonic } })),
    ],
    chosen: (setting) => setting.key.replace(/([A-G])b/, "$1♭").replace("#", "♯"),
  },
  ...(chordsOnly
    ? []
    : [
        {
          name: "rightLevel",
          before: ", the right hand at ",
          about: "What the right hand does",
          choices: levels("rightLevel", rightLevels),
        },
      ]),
  {
    name: "leftLevel",
    before: chordsOnly ? ", at " : ", the left at ",
    about: "What the left hand does",
    choices: levels("leftLevel", leftLevels),
  },
  ...(chordsOnly
    ? []
    : [
        {
          name: "raggedness",
          before: ", ",
          about: "How often it is syncopated",
          chosen: (setting: Setting) => sentences.shelf.raggedness(setting.raggedness),
          choices: [
            { label: "plain", about: "on the beat", wishes: { raggedness: 0 } },
            { label: "hardly ragged", wishes: { raggedness: 0.25 } },
            { label: "rather ragged", wishes: { raggedness: 0.5 } },
            { label: "ragged", wishes: { raggedness: 0.75 } },
            { label: "as ragged as it goes", wishes: { raggedness: 1 } },
          ],
        },
      ]),
  {
    name: "harmony",
    before: ", with ",
    about: "The chords",
    choices: [
      { label: "plain chords", about: "as they stand", wishes: { harmony: "plain" } },
      { label: "seasoned chords", about: "some dominants and passing chords", wishes: { harmony: "seasoned" } },
      { label: "rich chords", about: "wherever the tune allows", wishes: { harmony: "rich" } },
    ],
  },
  {
    name: "form",
    before: ", ",
    about: "The length",
    chosen: (setting) => sentences.shelf.form(setting.form),
    choices: [
      { label: "as it stands", wishes: { form: "plain", minutes: null } },
      { label: "with introduction and ending", about: "the arranger’s own form", wishes: { form: "usual", minutes: null } },
      { label: "for a minute", wishes: { form: null, minutes: "1" } },
      { label: "for two minutes", wishes: { form: null, minutes: "2" } },
      { label: "for three minutes", wishes: { form: null, minutes: "3" } },
    ],
  },
  {
    name: "pace",
    before: ", at ",
    about: "The pace",
    choices: [
      { label: sentences.ownPace, wishes: { beatsPerMinute: null } },
      ...[56, 63, 72, 80, 88, 96, 108, 120, 144, 168].map((bpm) => ({
        label: String(bpm),
        about: "beats a minute",
        wishes: { beatsPerMinute: bpm },
      })),
    ],
    chosen: (setting) => sentences.beats(Math.round(setting.beatsPerMinute), setting.beat),
  },
  {
    name: "hands",
    before: ", for ",
    about: "The hands, thumb to little finger laid flat",
    chosen: (setting) => sentences.shelf.hands(setting.hands.spanMm),
    choices: [
      { label: "small hands", about: "185 mm", wishes: { player: null, span: "185", noOctaves: false } },
      { label: "small hands, no octaves", about: "185 mm", wishes: { player: null, span: "185", noOctaves: true } },
      { label: "usual hands", about: "205 mm", wishes: { player: null, span: "205", noOctaves: false } },
      { label: "large hands", about: "230 mm", wishes: { player: null, span: "230", noOctaves: false } },
      ...players.map(({ id, title }) => ({ label: sentences.players.handsOf(title), wishes: { player: id, span: null, noOctaves: false } })),
    ],
  },
];

/** The brief of a tune that nothing was said about yet. */
export const usualBrief: Wishes = {
  feel: null,
  key: null,
  leftLevel: 4,
  rightLevel: 4,
  raggedness: 0.5,
  harmony: "plain",
  form: "plain",
  minutes: null,
  beatsPerMinute: null,
  player: null,
  span: "205",
  noOctaves: false,
};

export const isChosen = (choice: Choice, wishes: Wishes): boolean =>
  Object.entries(choice.wishes).every(([name, value]) => (wishes[name as keyof Wishes] ?? null) === value);
