// What the engraving library takes in Node: node engrave.mjs PACKAGE OPTIONS SCORE
// PACKAGE is the folder of its npm package, OPTIONS a JSON file, SCORE a MusicXML file. Prints seconds as JSON: load (until
// a toolkit is there), first (the score laid out and its first page drawn), later (each further page), warm (the whole
// score again), and the number of pages.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";

const [folder, options, score] = process.argv.slice(2);
const settings = JSON.parse(readFileSync(options, "utf8"));
const xml = readFileSync(score, "utf8");
const file = (name) => pathToFileURL(resolve(folder, "dist", name)).href;
const since = (start) => (performance.now() - start) / 1000;

const start = performance.now();
const { default: createModule } = await import(file("verovio-module.mjs"));
const { VerovioToolkit } = await import(file("verovio.mjs"));
const toolkit = new VerovioToolkit(await createModule());
const load = since(start);

function whole() {
  toolkit.setOptions(settings);
  if (!toolkit.loadData(xml)) throw new Error("the score could not be read");
  return toolkit.renderToSVG(1);
}

const opened = performance.now();
whole();
const first = since(opened);
const pages = toolkit.getPageCount();
const turned = performance.now();
for (let page = 2; page <= pages; page++) toolkit.renderToSVG(page);
const later = since(turned) / Math.max(1, pages - 1);
const again = performance.now();
whole();
for (let page = 2; page <= pages; page++) toolkit.renderToSVG(page);
console.log(JSON.stringify({ load, first, later, warm: since(again), pages }));
process.exit(0);
