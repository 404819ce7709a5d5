import { inverseNormal } from './inverse-normal';

/**
 * Random draws that belong to a key (a reading's id) and a seed: the same on every machine and in
 * every order, so that one more reading never changes the draws of another.
 */

/** FNV-1a, 32 bits, over the UTF-8 bytes of a text (Fowler, Noll, Vo; RFC 9923). */
export function fnv1a(text: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) {
    hash = Math.imul(hash ^ byte, 0x01000193);
  }
  return hash >>> 0;
}

const WARM_UP = 20;

/** 32-bit integers of sfc32 (C. Doty-Humphrey, PractRand), seeded by hashing seed, lane and key. */
export function integerGenerator(key: string, seed: number): () => number {
  let a = fnv1a(`${seed}|a|${key}`) | 0;
  let b = fnv1a(`${seed}|b|${key}`) | 0;
  let c = fnv1a(`${seed}|c|${key}`) | 0;
  let counter = 1;
  const next = (): number => {
    const out = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + out;
    c |= 0;
    return out >>> 0;
  };
  for (let i = 0; i < WARM_UP; i += 1) next();
  return next;
}

const RANGE = 2 ** 32;

/** `n` draws, uniform and strictly between 0 and 1. A longer series begins with the shorter one. */
export function uniformDraws(key: string, seed: number, n: number): Float64Array {
  const next = integerGenerator(key, seed);
  const draws = new Float64Array(n);
  for (let i = 0; i < n; i += 1) draws[i] = (next() + 0.5) / RANGE;
  return draws;
}

/**
 * `n` draws of the standard normal distribution, one integer each, through the inverse of its
 * cumulative distribution. A longer series begins with the shorter one.
 */
export function normalDraws(key: string, seed: number, n: number): Float64Array {
  const draws = uniformDraws(key, seed, n);
  for (let i = 0; i < n; i += 1) draws[i] = inverseNormal(draws[i] ?? 0.5);
  return draws;
}
