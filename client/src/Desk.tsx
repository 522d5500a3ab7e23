import { useComputedColorScheme, useMantineColorScheme } from "@mantine/core";
import { useDebouncedCallback } from "@mantine/hooks";
import { useEffect, useState } from "react";
import type { SettingMade } from "./api";
import { Bring } from "./Bring";
import { briefWords, usualBrief } from "./brief";
import { Handout } from "./handout/Handout";
import { useHearing } from "./hearing/useHearing";
import { Score } from "./Score";
import { Listen } from "./sound/Listen";
import { sentences } from "./sentences";
import { Kept } from "./shelf/Kept";
import { Progress } from "./progress/Progress";
import { Shelf } from "./shelf/Shelf";
import { remembered, useKeeping } from "./shelf/useKeeping";
import { Players } from "./players/Players";
import { usePlayers } from "./players/usePlayers";
import { Printed } from "./take/Printed";
import { Sight } from "./take/Sight";
import { Takeaway } from "./take/Takeaway";
import { useDropped } from "./useDropped";
import type { SpotMade } from "./spots/spotApi";
import { useSpots } from "./spots/useSpots";
import { useSteps, type Step } from "./useSteps";
import { useSetting, useTune } from "./useTune";
import { Beside } from "./versions/Beside";
import { Correct } from "./tune/Correct";
import { Word } from "./Word";

const TYPING_PAUSE = 350; // milliseconds

/** The music desk: one sheet of paper with the brief above the music. */
export function Desk() {
  const tune = useTune();
  const [text, setText] = useState("");
  const [isBringing, setBringing] = useState(!remembered());
  const [isShelfOpen, setShelfOpen] = useState(false);
  const steps = useSteps({ wishes: usualBrief });
  const { wishes } = steps.now;
  const setting = useSetting(tune, steps.now);
  const made = tune.tune ? setting.data : undefined;
  const before = useBefore(made);
  const corrected = steps.now.kept?.count === tune.count ? steps.now.kept : undefined;
  const onDesk = corrected?.tune ?? tune.tune;
  const players = usePlayers();
  const typed = useDebouncedCallback((words: string) => tune.put(words.trim() ? { text: words } : undefined), TYPING_PAUSE);

  const keeping = useKeeping({
    made: setting.isPlaceholderData ? undefined : made,
    onOpened(opened) {
      setText("");
      tune.put({ shelf: opened.item.id, version: opened.version.number });
      steps.begin({ wishes: opened.wishes });
      setBringing(false);
      setShelfOpen(false);
    },
    onForgotten: () => void setting.refetch(),
  });
  useEffect(() => {
    const id = remembered();
    if (id) keeping.open(id).catch(() => setBringing(true));
  }, []);

  const put = (kept: Omit<NonNullable<Step["kept"]>, "count" | "wishes">) => {
    if (!steps.isNow(steps.now)) throw new Error(sentences.overtaken);
    steps.put({ wishes, kept: { count: tune.count, wishes, ...kept } });
  };
  const take = (made: SpotMade) => {
    // It was made of the setting before, which is seen until the next is there.
    if (setting.isPlaceholderData) throw new Error(sentences.overtaken);
    put({ tunes: made.tunes, made: made.setting, tune: corrected?.tune });
  };

  function putFile(file: File) {
    keeping.begin();
    setText("");
    tune.put({ file });
  }
  useDropped(putFile);
  const isClean = tune.reading.data?.tunes.length === 1 && !tune.reading.data.findings.some((f) => f.severity !== "note");
  const isFile = tune.source !== undefined && "file" in tune.source;
  useEffect(() => {
    if (isFile) setBringing(!isClean);
  }, [isFile, isClean, tune.count]);

  return (
    <>
      <Lamp />
      <main className="paper">
        {isBringing ? (
          <Bring
            text={text}
            brought={tune.source && tune.reading.data}
            number={tune.number}
            isReading={tune.reading.isFetching}
            problem={tune.reading.error?.message}
            onText={(words) => {
              if (!text.trim()) keeping.begin();
              setText(words);
              typed(words);
            }}
            onFile={putFile}
            onSample={(words) => {
              keeping.begin();
              setText(words);
              tune.put({ text: words });
              setBringing(false);
            }}
            onNumber={tune.setNumber}
            onClose={tune.tune && (() => setBringing(false))}
          />
        ) : (
          <div className="again">
            <h1>{tune.tune?.title ?? sentences.shelf.fetching}</h1>
            <button type="button" className="word aside" onClick={() => setBringing(true)}>
              {sentences.another}
            </button>
          </div>
        )}
        <Kept keeping={keeping} isOpen={isShelfOpen} onShelf={() => setShelfOpen(!isShelfOpen)} />
        {isShelfOpen && <Shelf keeping={keeping} onClose={() => setShelfOpen(false)} />}
        <Progress />
        {tune.tune && (
          <section className="brief" aria-label={sentences.brief}>
            <p className="sentence">
              {briefWords(onDesk!.metre, onDesk!.chordsOnly, players).map((word, i, all) => (
                <Word
                  key={word.name}
                  word={word}
                  sign={i === all.length - 1 ? "." : all[i + 1]!.before.startsWith(",") ? "," : ""}
                  wishes={wishes}
                  setting={made?.tune.setting}
                  onChange={(change) => steps.put({ ...steps.now, wishes: { ...wishes, ...change } })}
                />
              ))}
            </p>
            <Printed
              wishes={wishes}
              chordsOnly={tune.tune.chordsOnly}
              onChange={(change) => steps.put({ ...steps.now, wishes: { ...wishes, ...change } })}
            />
            <Correct
              at={corrected ? { id: corrected.tunes, number: 1 } : { id: tune.reading.data!.id, number: tune.number }}
              title={onDesk!.title}
              onCorrected={({ id, tunes }) => put({ tunes: id, tune: tunes[0] })}
              onWrite={(abc) => {
                setText(abc);
                tune.put({ text: abc });
                setBringing(true);
              }}
            />
            <Players
              players={players}
              chosen={wishes.player ?? undefined}
              onChoose={(player) => steps.put({ ...steps.now, wishes: { ...wishes, player, span: null, noOctaves: false } })}
            />
            <div className="pencil" role="status">
              {setting.error ? <p className="fault">{setting.error.message}</p> : made && <Effect made={made} before={before} />}
            </div>
            {(steps.back || steps.forward) && (
              <p>
                {steps.back && (
                  <button type="button" className="word aside" onClick={steps.back}>
                    {sentences.undo}
                  </button>
                )}{" "}
                {steps.forward && (
                  <button type="button" className="word aside" onClick={steps.forward}>
                    {sentences.redo}
                  </button>
                )}
              </p>
            )}
          </section>
        )}
        {made && (
          <>
            <Sight made={made} />
            <Beside made={made} item={keeping.item} onTake={take} />
            <Music
              key={`${tune.count}-${tune.number}`}
              made={made}
              piece={keeping.item?.id}
              isWorking={setting.isFetching}
              onMade={take}
            />
            <footer className="take-away">
              <Takeaway made={made} />
              <Handout made={made} />
              <p className="rights">{sentences.rights}</p>
            </footer>
          </>
        )}
      </main>
    </>
  );
}

interface MusicProps {
  made: SettingMade;
  /** Id of the arrangement on the shelf. */
  piece: string | undefined;
  isWorking: boolean;
  onMade: (made: SpotMade) => void;
}

function Music({ made, piece, isWorking, onMade }: MusicProps) {
  const spots = useSpots(made.id, onMade);
  const hearing = useHearing(made.id, piece);
  return (
    <Listen
      id={made.id}
      beside={(pencil) => {
        const [work, take] = [spots(pencil), hearing(pencil)];
        return {
          line: (
            <>
              {work.line}
              {take.line}
            </>
          ),
          card: take.card,
          over: (
            <>
              {work.over}
              {take.over}
            </>
          ),
        };
      }}
    >
      <Score made={made} isWorking={isWorking} />
    </Listen>
  );
}

// What the last change did, in pencil.
function Effect({ made, before }: { made: SettingMade; before: SettingMade | undefined }) {
  const { setting } = made.tune;
  const points = before ? Math.round(setting.effort.overall) - Math.round(before.tune.setting.effort.overall) : 0;
  const seconds = Math.round(setting.seconds);
  const time = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
  return (
    <p>
      {sentences.effort(setting.effort.overall, setting.effort.words ?? "")} {sentences.effortChange(points)}{" "}
      {sentences.length(setting.bars, time, made.pages)}{" "}
      {setting.hardestBars && setting.hardestBars.length > 0 && sentences.hardest(setting.hardestBars.map((b) => b.bar).join(", "))}{" "}
      {setting.tune.notes > 0 && sentences.survival(setting.tune.kept, setting.tune.notes)}
    </p>
  );
}

// The setting of the same tune before this one.
function useBefore(made: SettingMade | undefined): SettingMade | undefined {
  const [[before, now], setPair] = useState<[SettingMade | undefined, SettingMade | undefined]>([undefined, undefined]);
  if (made !== now) {
    setPair([now?.tune.title === made?.tune.title ? now : undefined, made]);
  }
  return before;
}

function Lamp() {
  const { setColorScheme } = useMantineColorScheme();
  const isDark = useComputedColorScheme("light") === "dark";
  return (
    <p className="lamp">
      <button type="button" className="word aside" onClick={() => setColorScheme(isDark ? "light" : "dark")}>
        {isDark ? sentences.lampUp : sentences.lampDown}
      </button>
    </p>
  );
}
