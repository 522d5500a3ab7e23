const HEADER = 27; // bytes of a page before its table (RFC 3533, 6)
const FULL = 255; // bytes of a segment that the next one goes on with

/** The packets of an Ogg file with one stream, and how many frames of sound they hold. */
export function packetsOf(file: Uint8Array): { packets: Uint8Array[]; frames: number } {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const packets: Uint8Array[] = [];
  let begun: number[] = [];
  let frames = 0;
  for (let page = 0; page + HEADER <= file.length; ) {
    if (String.fromCharCode(...file.subarray(page, page + 4)) !== "OggS") {
      throw new Error(`no Ogg page at byte ${page}`);
    }
    // Of its 64 bits no recording needs more than these.
    frames = Math.max(frames, view.getInt32(page + 6, true));
    const segments = file.subarray(page + HEADER, page + HEADER + file[page + HEADER - 1]!);
    let at = page + HEADER + segments.length;
    for (const size of segments) {
      begun.push(...file.subarray(at, at + size));
      at += size;
      if (size < FULL) {
        packets.push(Uint8Array.from(begun));
        begun = [];
      }
    }
    page = at;
  }
  return { packets, frames };
}
