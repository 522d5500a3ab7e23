import { watchLayout } from "../layout";
import { sentences } from "../sentences";
import { Cursor } from "../sound/cursor";
import { make } from "./make";

const WIDE = matchMedia("(min-width: 600px)");

/** The engraved pages of one part, for the width that there is, with the pencil’s mark over them. */
export class Pages {
  readonly layer = make("div", { class: "cursor", "aria-hidden": "true" });
  readonly cursor: Cursor;
  readonly element = make("div", { class: "music" });
  private part = 0;
  private title = "";

  /** @param onChange Called when other pages lie there. */
  constructor(onChange: () => void) {
    this.element.append(this.layer);
    this.cursor = new Cursor(this.layer);
    watchLayout(this.element, () => this.cursor.forget());
    WIDE.addEventListener("change", () => {
      this.put(this.part, this.title);
      onChange();
    });
  }

  put(part: number, title: string): void {
    [this.part, this.title] = [part, title];
    const template = document.getElementById(`${WIDE.matches ? "wide" : "narrow"}-${part}`) as HTMLTemplateElement;
    const pages = [...document.importNode(template.content, true).children];
    this.element.replaceChildren(
      ...pages.map((page, i) => {
        const label = `${title}. ${sentences.pageOf(i + 1, pages.length)}`;
        return make("div", { class: "page", role: "img", "aria-label": label }, page);
      }),
      this.layer,
    );
    this.cursor.forget();
  }
}
