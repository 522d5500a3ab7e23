import { sentences } from "../sentences";
import { pocket, type Task } from "./data";
import { make } from "./make";

const words = sentences.pocket;
const KEY = `pocket-${pocket.mark}`;

/** The list for today; what is ticked stays ticked until tomorrow. */
export function today(layOut: (task: Task) => void): HTMLElement | undefined {
  if (pocket.today.length === 0) {
    return undefined;
  }
  const done = new Set(remembered());
  const told = make("p", { class: "pencil", role: "status" });
  const minutes = pocket.today.reduce((sum, task) => sum + (task.minutes ?? 0), 0);
  const tell = () => (told.textContent = words.done(done.size, pocket.today.length));
  tell();
  const lines = pocket.today.map((task, i) =>
    make(
      "li",
      {},
      make(
        "label",
        {},
        make("input", {
          type: "checkbox",
          checked: done.has(i),
          change({ target }) {
            if ((target as HTMLInputElement).checked) done.add(i);
            else done.delete(i);
            remember([...done]);
            tell();
          },
        }),
        make("span", { class: "text" }, words.task(task.text, task)),
      ),
      make("button", { type: "button", class: "word lay", click: () => layOut(task), "aria-label": words.layOutTask(task.text) }, words.layOut),
    ),
  );
  return make("section", { class: "today", "aria-labelledby": "today" }, make("h2", { id: "today" }, words.today(minutes)), make("ol", {}, ...lines), told);
}

const day = () => new Date().toDateString();

// A browser may keep nothing for files: then the list is a list.
function remembered(): number[] {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return kept?.day === day() && Array.isArray(kept.done) ? kept.done : [];
  } catch {
    return [];
  }
}

function remember(done: number[]): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ day: day(), done }));
  } catch {
    // As above.
  }
}
