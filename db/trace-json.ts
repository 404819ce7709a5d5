import { z } from 'zod';
import type { HandPlacing, TraceMaking, TraceUncertainty } from '~/lib/case/trace';

const pair = z.tuple([z.number(), z.number()]);

/** Said of a rail's drawing, or not there. */
const plumb = z.literal(true).optional();

/** Said of a point's drawing, or not there. */
const behindEntered = z.string().max(60).optional();

/** What a making looks like in the database and in a form. */
export const makingSchema: z.ZodType<TraceMaking> = z.discriminatedUnion('by', [
  z.object({
    by: z.literal('file'),
    plumb,
    behindEntered,
    unit: z.enum(['mm', 'in']),
    columns: z.tuple([z.int().min(0), z.int().min(0)]),
    flipped: z.object({ x: z.boolean(), y: z.boolean() }),
  }),
  z.object({
    by: z.literal('photo'),
    plumb,
    behindEntered,
    size: pair,
    focal35Mm: z.number().positive().nullable(),
    scale: z.array(z.object({ from: pair, to: pair, apartMm: z.number().positive() })).min(1),
    clicks: z.array(pair).min(2),
    straight: z.array(z.int().min(0)),
  }),
  z.object({
    by: z.literal('pins'),
    plumb,
    behindEntered,
    entered: z.string(),
    unit: z.enum(['mm', 'in']),
    pitchMm: z.number().positive(),
  }),
]);

export const uncertaintySchema: z.ZodType<TraceUncertainty> = z.object({
  acrossMm: z.number().min(0),
  scale: z.number().min(0),
  because: z.array(z.string()),
});

export const handSchema: z.ZodType<HandPlacing> = z.object({
  dxMm: z.number(),
  dyMm: z.number(),
  angleRad: z.number(),
  reason: z.string().min(1),
});
