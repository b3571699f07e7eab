/**
 * Bits of a TEDS: the stream begins with the lowest bit of the first byte, and a field of several bits with its lowest.
 * Source: IEEE 1451.4; the order is that of a published memory dump.
 */
export function takeBits(bytes: Uint8Array, offset: number, width: number): number {
  let code = 0;
  for (let i = 0; i < width; i += 1) {
    const at = offset + i;
    if ((bytes[at >> 3] >> (at & 7)) & 1) code += 2 ** i;
  }
  return code;
}

/** Writes a code of `width` bits (up to 32) at a bit offset, in the same order, into bytes that hold zeros there. */
export function putBits(bytes: Uint8Array, offset: number, width: number, code: number): void {
  for (let i = 0; i < width; i += 1) {
    const at = offset + i;
    if (Math.floor(code / 2 ** i) % 2 === 1) bytes[at >> 3] |= 1 << (at & 7);
  }
}
