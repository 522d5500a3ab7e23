import { sentences } from "../sentences";
import { pocket, type Task } from "./data";
import { Desk } from "./desk";
import { make } from "./make";
import { today } from "./today";

const words = sentences.pocket;
const desk = new Desk();

function layOut(task: Task) {
  desk.layOut(task);
  desk.element.scrollIntoView();
  desk.playWord.focus({ preventScroll: true });
}

document.getElementById("sheet")!.append(
  make("h1", {}, pocket.title),
  ...(pocket.player ? [make("p", { class: "credits" }, words.forPlayer(pocket.player))] : []),
  ...pocket.parts[0]!.credits.map((credit) => make("p", { class: "credits" }, credit)),
  ...[today(layOut)].filter((list) => list !== undefined),
  desk.element,
  make(
    "footer",
    {},
    make("h2", {}, words.care),
    ...[words.pain, sentences.pauses, sentences.loudness].map((caution) => make("p", { class: "rights" }, caution)),
    make("h2", {}, words.about),
    ...words.rights.map((right) => make("p", { class: "rights" }, right)),
  ),
);
desk.show(0);
