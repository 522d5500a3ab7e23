/** Every sentence of the page, in one place so that it can be put into another language. */
export const sentences = {
  bringTitle: "Put a tune on the desk",
  bringLead: "Drop a file anywhere on this page, ",
  bringPick: "choose one",
  bringKinds: " (ABC, MusicXML or MIDI), or write it here: a tune in ABC, or chords alone.",
  bringText: "A tune in ABC, or chords such as F | D7 | G7 C7 | F",
  bringSample: "Or begin with one of ours: ",
  bringClose: "lay this aside",
  bringing: "reading it",
  whichTune: "This book has several tunes. Which one?",
  tuneOf: (title: string, key: string, metre: string, bars: number) => `${title}, ${key}, ${metre}, ${bars} bars`,
  chordsOnly: "chords alone, for the left hand",
  understood: (count: number) => (count === 1 ? "One tune was understood." : `${count} tunes were understood.`),
  nothingUnderstood: "No tune was understood.",
  severity: { error: "fault", warning: "mended", note: "note" } as Record<string, string>,

  another: "bring another tune",
  brief: "What is wanted",
  score: "The score",
  pageOf: (page: number, pages: number) => `Page ${page} of ${pages}`,
  working: "engraving",
  change: (word: string) => `${word}, change it`,

  effort: (effort: number, words: string) => `Effort ${effort.toFixed(0)} of 100: it ${words}.`,
  effortChange: (points: number) =>
    points > 0 ? `${points} harder than before.` : points < 0 ? `${-points} easier than before.` : "",
  length: (bars: number, time: string, pages: number) => `${bars} bars, ${time}, ${pages === 1 ? "one page" : `${pages} pages`}.`,
  hardest: (bars: string) => `Hardest: bars ${bars}.`,
  survival: (kept: number, notes: number) => `${kept} of ${notes} notes of the tune stand.`,

  takeAway: "Take it away as ",
  formats: { pdf: "PDF", musicxml: "MusicXML", midi: "MIDI" } as Record<string, string>,
  rights: "An arrangement of a work in copyright needs its owner’s permission where the law says so.",

  lampDown: "turn the lamp down",
  lampUp: "turn the lamp up",
  undo: "take the last change back",
  noAnswer: "The program does not answer. Is it still running?",

  ownKey: "its own key",
  beats: (count: number, beat: string) => `${count} ${beat}s a minute`,
  ownPace: "its own pace",
  level: (level: number) => `level ${level}`,
};
