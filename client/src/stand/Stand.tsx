import { useElementSize } from "@mantine/hooks";
import { useQuery } from "@tanstack/react-query";
import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type MouseEvent } from "react";
import { print, type SettingMade } from "../api";
import { useFollow } from "../hearing/useFollow";
import { sentences } from "../sentences";
import { Leaf, leafOf, placeOn, shapeOf } from "./Leaf";
import { viewOf, views } from "./turns";
import { useAwake } from "./useAwake";
import "./stand.css";

const WORDS_STAY = 4000; // milliseconds
const NUMBER_STAYS = 2000;
const TOP = 1 / 6; // of the screen: where a tap brings the words

const forward = new Set(["PageDown", "ArrowRight", "ArrowDown", " ", "Enter"]);
const backward = new Set(["PageUp", "ArrowLeft", "ArrowUp", "Backspace"]);

/** The pages alone, as large as the screen lets them be, to play from. All are fetched when it opens, and none after. */
export function Stand({ made, onClose }: { made: SettingMade; onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const { ref: room, width, height } = useElementSize();
  const isUpright = height >= width;
  const [choice, setChoice] = useState<boolean>();
  const hasHalves = choice ?? !isUpright;
  const [cuts, setCuts] = useState<number[][]>([]);
  const [index, setIndex] = useState(0);
  const words = useLinger(WORDS_STAY);
  const number = useLinger(NUMBER_STAYS);
  useAwake();

  const { data: svgs, error: fault } = useQuery({
    queryKey: ["print", made.id],
    queryFn: ({ signal }) => print(made.id, signal),
    staleTime: Infinity,
    gcTime: Infinity,
  });
  const pages = svgs?.length ?? made.pages;
  const pictures = useMemo(() => svgs?.map((svg, i) => leafOf(svg, i + 1)) ?? [], [svgs]);
  const shape = pictures[0] ? shapeOf(pictures[0]) : 1;
  const known = Array.from({ length: pages }, (_, i) => cuts[i] ?? []);
  const all = views(known, hasHalves, isUpright);
  const at = Math.min(index, all.length - 1);
  const view = all[at]!;
  const tallest = Math.max(...all.map((v) => (v.parts.length > 1 ? 1 : v.parts[0]!.to - v.parts[0]!.from)));
  const leafHeight = Math.min(height / tallest, width / shape);
  // A part that stands alone begins at the top.
  const up = view.parts.length > 1 ? 0 : view.parts[0]!.from;

  const follow = useFollow(made.id);
  useEffect(() => {
    const there = follow.bar === undefined ? undefined : placeOn(pictures, follow.bar);
    const next = there ? viewOf(all, there.page, there.height) : -1;
    if (next >= 0 && next !== at) {
      setIndex(next);
      number.show();
    }
  }, [follow.bar]);

  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    dialog.current?.focus();
    words.show();
    number.show();
  }, []);

  function turn(step: number) {
    setIndex(Math.min(all.length - 1, Math.max(0, at + step)));
    number.show();
  }

  function press(event: KeyboardEvent) {
    event.stopPropagation();
    if (event.altKey || event.ctrlKey || event.metaKey || event.repeat) return;
    const isOnWord = (event.target as Element).closest("button") !== null;
    if (event.key === "Tab") words.show();
    if (isOnWord && (event.key === " " || event.key === "Enter")) return;
    const step =
      event.key === " " && event.shiftKey ? -1
      : forward.has(event.key) ? 1
      : backward.has(event.key) ? -1
      : event.key === "Home" ? -all.length
      : event.key === "End" ? all.length
      : undefined;
    if (step === undefined) return;
    event.preventDefault();
    turn(step);
  }

  function tap(event: MouseEvent) {
    if ((event.target as Element).closest(".stand-words")) return;
    if (event.clientY < window.innerHeight * TOP) words.show();
    else turn(event.clientX < window.innerWidth / 2 ? -1 : 1);
  }

  function halve() {
    const { page: here } = view;
    setChoice(!hasHalves);
    setIndex(views(known, !hasHalves, isUpright).findIndex((v) => v.page === here));
    // A pedal that sends Space is to turn the page, not this word again.
    dialog.current?.focus();
  }

  return (
    <dialog
      ref={dialog}
      className="stand"
      aria-label={sentences.stand.title(made.tune.title)}
      tabIndex={-1}
      onKeyDown={press}
      onKeyUp={(event) => event.stopPropagation()}
      onClick={tap}
      onMouseMove={(event) => event.clientY < window.innerHeight * TOP && words.show()}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div ref={room} className="stand-room">
        {width > 0 && (
          <div className="stand-sheet" style={{ width: leafHeight * shape, height: Math.min(leafHeight, height) }}>
            {pictures.map((picture, i) => {
              const part = view.parts.find((p) => p.page === i);
              return (
                picture && (
                  <Leaf
                    key={i}
                    picture={picture}
                    label={`${made.tune.title}. ${sentences.pageOf(i + 1, pages)}`}
                    height={leafHeight}
                    seen={part && { ...part, up }}
                    onCuts={(own) => setCuts((before) => Object.assign([...before], { [i]: own }))}
                  />
                )
              );
            })}
            {view.parts.length > 1 && <div className="fold" style={{ top: `${view.parts[1]!.from * 100}%` }} />}
            {!svgs && !fault && <p className="pencil stand-fault" role="status">{sentences.stand.laying}</p>}
            {fault && <p className="pencil fault stand-fault">{sentences.stand.missing(fault.message)}</p>}
          </div>
        )}
      </div>
      <p className="stand-number" role="status" data-shown={number.isShown || undefined}>
        {sentences.stand.place(view.page + 1, pages, view.parts.length > 1, view.parts.length === 1 ? view.parts[0]! : undefined)}
      </p>
      <div className="stand-words" data-shown={words.isShown || undefined}>
        <p>
          <button type="button" className="word" onClick={onClose}>
            {sentences.stand.leave}
          </button>
          {", "}
          {sentences.stand.or}{" "}
          <button type="button" className="word" onClick={halve}>
            {hasHalves ? sentences.stand.byPages : sentences.stand.byHalves}
          </button>
          {"requestMIDIAccess" in navigator && (
            <>
              {", "}
              {sentences.stand.or}{" "}
              <button
                type="button"
                className="word"
                aria-pressed={follow.isOn}
                onClick={() => {
                  follow.toggle();
                  dialog.current?.focus();
                }}
              >
                {follow.isOn ? sentences.stand.unfollow : sentences.stand.follow}
              </button>
            </>
          )}
          .
        </p>
        {follow.hasNone && <p className="pencil" role="status">{sentences.hearing.noKeyboard}</p>}
        <p className="pencil">{sentences.stand.how}</p>
      </div>
    </dialog>
  );
}

// Shown for a while.
function useLinger(time: number) {
  const [isShown, setShown] = useState(false);
  const timer = useRef(0);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  return {
    isShown,
    show() {
      setShown(true);
      window.clearTimeout(timer.current);
      timer.current = window.setTimeout(() => setShown(false), time);
    },
  };
}
