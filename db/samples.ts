import { endianness } from 'node:os';

/** Samples as kept: 64-bit floats, little-endian, whatever the machine. Shares memory where it can. */
export function toSamples(values: Float64Array): Buffer {
  const bytes = Buffer.from(values.buffer, values.byteOffset, values.byteLength);
  return endianness() === 'LE' ? bytes : Buffer.from(bytes).swap64();
}

/** The samples of kept bytes, in memory of their own. */
export function fromSamples(bytes: Buffer): Float64Array {
  const own = Buffer.from(bytes);
  if (endianness() === 'BE') own.swap64();
  const values = new Float64Array(own.byteLength / 8);
  own.copy(new Uint8Array(values.buffer));
  return values;
}
