import WASMAudioDecoderCommon from "../../node_modules/@wasm-audio-decoders/common/src/WASMAudioDecoderCommon.js";
import EmscriptenWASM from "../../node_modules/@wasm-audio-decoders/ogg-vorbis/src/EmscriptenWasm.js";
import { packetsOf } from "./ogg";

const MOST_BYTES = 128 * 1024; // of a packet
const MOST_ERRORS = 256;

/** Decodes an Ogg Vorbis file where the browser cannot. */
export async function decode(file: Uint8Array): Promise<{ channels: Float32Array<ArrayBuffer>[]; rate: number }> {
  const { packets, frames } = packetsOf(file);
  const common = await new WASMAudioDecoderCommon().instantiate(EmscriptenWASM);
  const { wasm } = common;
  const input = common.allocateTypedArray(MOST_BYTES, Uint8Array);
  const one = () => common.allocateTypedArray(1, Uint32Array);
  const [length, output, channels, rate, decoded, errorCount] = [one(), one(), one(), one(), one(), one()];
  const errors = common.allocateTypedArray(MOST_ERRORS, Uint32Array);
  const decoder = wasm.create_decoder(input.ptr, length!.ptr, output!.ptr, channels!.ptr, rate!.ptr, decoded!.ptr, errors.ptr, errorCount!.ptr, MOST_ERRORS);
  const hand = (packet: Uint8Array) => {
    input.buf.set(packet);
    length!.buf[0] = packet.length;
  };
  try {
    // The second packet has comments only.
    const [first, , setup, ...sounding] = packets;
    hand(first!);
    wasm.send_setup(decoder, true);
    hand(setup!);
    wasm.send_setup(decoder, false);
    wasm.init_dsp(decoder);
    let samples: Float32Array<ArrayBuffer>[] = [];
    let at = 0;
    for (const packet of sounding) {
      hand(packet);
      wasm.decode_packets(decoder);
      const count = Math.min(decoded!.buf[0]!, frames - at);
      const places = new Uint32Array(wasm.HEAP, output!.buf[0], channels!.buf[0]);
      if (samples.length === 0) samples = [...places].map(() => new Float32Array(frames));
      samples.forEach((channel, i) => channel.set(new Float32Array(wasm.HEAP, places[i], count), at));
      at += count;
    }
    return { channels: samples, rate: rate!.buf[0]! };
  } finally {
    wasm.destroy_decoder(decoder);
    common.free();
  }
}
