import { copyFileSync } from "node:fs";
import { defineConfig, type Plugin } from "vite";

const output = "../artifacts/pocket";

// The decoder lies in the script as text, byte for letter. A page must not have the letter 0: it becomes what that text has
// for letters that cannot stand (an escape, and the letter 64 higher). The decoder's own checksum proves it right.
const wholeText: Plugin = {
  name: "whole-text",
  generateBundle(_, bundle) {
    for (const chunk of Object.values(bundle)) {
      if (chunk.type === "chunk") chunk.code = chunk.code.replaceAll("\0", "=@");
    }
  },
};

const frame: Plugin = {
  name: "frame",
  closeBundle: () => copyFileSync("src/pocket/pocket.html", `${output}/pocket.html`),
};

// One script and one style, from which the Workbench project fills files that need nothing else.
export default defineConfig({
  plugins: [wholeText, frame],
  build: {
    outDir: output,
    emptyOutDir: true,
    target: ["es2020", "safari16"],
    lib: { entry: "src/pocket/index.ts", formats: ["iife"], name: "pocket", fileName: () => "pocket.js", cssFileName: "pocket" },
  },
});
