// What is used of the decoder's package, which has no types for it.
interface Shared<T> {
  ptr: number;
  buf: T;
}

interface Decoding {
  HEAP: ArrayBuffer;
  create_decoder(...places: number[]): number;
  send_setup(decoder: number, isFirst: boolean): void;
  init_dsp(decoder: number): void;
  decode_packets(decoder: number): void;
  destroy_decoder(decoder: number): void;
}

declare module "*/WASMAudioDecoderCommon.js" {
  export default class WASMAudioDecoderCommon {
    readonly wasm: Decoding;
    instantiate(wasm: unknown): Promise<WASMAudioDecoderCommon>;
    allocateTypedArray<T>(length: number, type: new (heap: ArrayBuffer, at: number, length: number) => T): Shared<T>;
    free(): void;
  }
}

declare module "*/EmscriptenWasm.js" {
  const wasm: unknown;
  export default wasm;
}
