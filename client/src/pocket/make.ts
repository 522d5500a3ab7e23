type Child = Node | string | undefined | false;

/** An element with its attributes and handlers; all text is text. */
export function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  said: Record<string, string | number | boolean | ((event: Event) => void)> = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  for (const [attribute, value] of Object.entries(said)) {
    if (typeof value === "function") element.addEventListener(attribute, value);
    else if (typeof value === "boolean") element.toggleAttribute(attribute, value);
    else element.setAttribute(attribute, String(value));
  }
  element.append(...children.filter((child) => child !== undefined && child !== false));
  return element;
}

/** A word that can be another one. */
export function pick<T>(label: string, choices: [T, string][], onChange: (value: T) => void) {
  const select = make("select", { class: "word", "aria-label": label });
  function offer(now: [T, string][]) {
    choices = now;
    select.replaceChildren(...choices.map(([, text], i) => make("option", { value: i }, text)));
  }
  offer(choices);
  select.addEventListener("change", () => onChange(choices[select.selectedIndex]![0]));
  return {
    select,
    offer,
    /** The choice must be among them. */
    show: (value: T) => (select.selectedIndex = choices.findIndex(([choice]) => choice === value)),
  };
}
