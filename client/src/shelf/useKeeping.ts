import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import type { SettingMade } from "../api";
import { isGone, keepSetting, openFromShelf, saveSetting, type Opened, type ShelfItem, type ShelfSaved } from "./shelfApi";

const PAUSE = 700; // milliseconds without a change
const REMEMBERED = "stridewright-desk";

/** What was last on this page's desk, else on that of another page of this browser. */
export const remembered = () => sessionStorage.getItem(REMEMBERED) ?? localStorage.getItem(REMEMBERED) ?? undefined;

function remember(id: string | undefined) {
  for (const storage of [sessionStorage, localStorage]) {
    if (id) storage.setItem(REMEMBERED, id);
    else storage.removeItem(REMEMBERED);
  }
}

interface Props {
  /** The setting that the brief asks for now; undefined while there is none. */
  made: SettingMade | undefined;
  onOpened: (opened: Opened) => void;
  /** The host no longer has the setting. */
  onForgotten: () => void;
}

/** Keeps what is on the desk on the shelf, by itself. Saves follow each other; none goes over another page's. */
export function useKeeping({ made, onOpened, onForgotten }: Props) {
  const queries = useQueryClient();
  const [item, setItem] = useState<ShelfItem>();
  const [conflict, setConflict] = useState<ShelfSaved>();
  const [problem, setProblem] = useState<string>();
  const [kept, setKept] = useState<string>();
  const desk = useRef<{ item: ShelfItem | undefined; turn: number }>({ item: undefined, turn: 0 });
  const queue = useRef(Promise.resolve());
  const last = useRef<string>(undefined);
  const pending = useRef<() => void>(undefined);
  const asked = useRef<string>(undefined);

  function put(next: ShelfItem | undefined) {
    desk.current.item = next;
    setItem(next);
    setConflict(undefined);
    setProblem(undefined);
    remember(next?.id);
    void queries.invalidateQueries({ queryKey: ["shelf"] });
  }

  async function keep(setting: string, turn: number) {
    if (desk.current.turn !== turn || last.current === setting) return;
    try {
      const stands = desk.current.item;
      const saved = stands ? await saveSetting(stands.id, stands.version, setting) : await keepSetting(setting);
      if (desk.current.turn !== turn) return;
      last.current = setting;
      setKept(setting);
      if (saved.beside) setConflict(saved);
      else put(saved.item);
    } catch (fault) {
      if (desk.current.turn !== turn) return;
      if (isGone(fault) && asked.current !== setting) {
        // Made again, it has another id; where that fails too, the document is gone and begins anew.
        asked.current = setting;
        if (desk.current.item && !(await stillThere(desk.current.item.id))) desk.current.item = undefined;
        onForgotten();
      }
      setProblem((fault as Error).message);
    }
  }

  const turn = desk.current.turn;
  const setting = made?.id;
  useEffect(() => {
    if (!setting || conflict || last.current === setting) return;
    const save = () => {
      clearTimeout(timer);
      pending.current = undefined;
      queue.current = queue.current.then(() => keep(setting, turn));
    };
    const timer = setTimeout(save, PAUSE);
    pending.current = save;
    return () => clearTimeout(timer);
  }, [setting, conflict, turn]);
  useEffect(() => {
    const leave = () => pending.current?.();
    window.addEventListener("pagehide", leave);
    return () => window.removeEventListener("pagehide", leave);
  }, []);

  return {
    item,
    conflict,
    problem,
    /** What is seen is what is kept. */
    isKept: setting !== undefined && kept === setting,
    /** What is put on the desk next is another piece. */
    begin() {
      pending.current?.();
      desk.current = { item: undefined, turn: desk.current.turn + 1 };
      put(undefined);
    },
    async open(id: string, version?: number) {
      pending.current?.();
      await queue.current;
      const opened = await openFromShelf(id, version);
      desk.current.turn++;
      last.current = undefined;
      // What is made of a tune is a piece of its own.
      put(opened.item.kind === "tune" ? undefined : opened.item);
      onOpened(opened);
    },
    /** Goes on from what stands on the shelf now. */
    goOn(next: ShelfItem) {
      put(next);
    },
  };
}

const stillThere = (id: string) =>
  openFromShelf(id).then(
    () => true,
    (fault) => !isGone(fault),
  );
