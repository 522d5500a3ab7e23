// Runs inside the engine: starts the engraving library and hands its results over as bytes.
import createVerovioModule from "verovio-module.mjs";

const log = [];
const note = (...words) => void log.push(words.join(" "));
globalThis.console = { log: note, info: note, warn: note, error: note, debug: () => {} };

// Ids that the library makes up must not differ from run to run: it draws them from here.
let state = 1;
globalThis.crypto = {
    getRandomValues(view) {
        for (let i = 0; i < view.length; i++) {
            state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
            view[i] = state >>> 24;
        }
        return view;
    },
};

// The library's memory lies outside the engine's heap: it gets a limit of its own.
const grow = WebAssembly.Memory.prototype.grow;
WebAssembly.Memory.prototype.grow = function (pages) {
    if (this.buffer.byteLength + pages * 65536 > globalThis.memoryLimit) {
        throw new RangeError("out of memory");
    }
    return grow.call(this, pages);
};

const verovio = await createVerovioModule({ print: note, printErr: note });
const warnings = 2;
verovio._enableLog(warnings);
verovio._enableLogToBuffer(0);
const toolkit = verovio._vrvToolkit_constructor();

// A string that the library owns, as bytes; valid until the next call.
const bytesAt = (at) => verovio.HEAPU8.subarray(at, verovio.HEAPU8.indexOf(0, at));

// Passes UTF-8 text through the library's heap; its stack would overflow with a long one.
function withText(bytes, call) {
    const at = verovio._malloc(bytes.length + 1);
    if (at === 0) {
        throw new RangeError("out of memory");
    }
    try {
        verovio.HEAPU8.set(bytes, at);
        verovio.HEAPU8[at + bytes.length] = 0;
        return call(at);
    } finally {
        verovio._free(at);
    }
}

globalThis.bridge = {
    buffer: (length) => new Uint8Array(length),
    load(options, data) {
        verovio._vrvToolkit_resetOptions(toolkit);
        verovio._vrvToolkit_resetXmlIdSeed(toolkit, 1);
        withText(options, (at) => verovio._vrvToolkit_setOptions(toolkit, at));
        return withText(data, (at) => verovio._vrvToolkit_loadData(toolkit, at)) !== 0;
    },
    layOutAgain(options) {
        withText(options, (at) => verovio._vrvToolkit_setOptions(toolkit, at));
        withText(new Uint8Array([0x7b, 0x7d]), (at) => verovio._vrvToolkit_redoLayout(toolkit, at));
    },
    pageCount: () => verovio._vrvToolkit_getPageCount(toolkit),
    page: (number) => bytesAt(verovio._vrvToolkit_renderToSVG(toolkit, number, 0)),
    timeMap: (options) => withText(options, (at) => bytesAt(verovio._vrvToolkit_renderToTimemap(toolkit, at))),
    midi: () => bytesAt(verovio._vrvToolkit_renderToMIDI(toolkit)),
    takeLog: () => log.splice(0).join("\n"),
};
