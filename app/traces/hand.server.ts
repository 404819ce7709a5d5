import type { Trace } from '~/lib/case/trace';
import { fromCanonical, toCanonical } from '~/lib/readings/convert';
import { HAND_BOXES, type HandBoxes, type HandTrial } from './hand';

type Source = { readonly get: (name: string) => unknown };

const NUMBER = /^[+-]?\d{1,3}([.,]\d{1,4})?$/;
const MOST_MM = 200;
const MOST_DEGREES = 180;

function typed(text: string, most: number): number {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  if (plain === '') return 0;
  const value = NUMBER.test(plain) ? Number(plain) : NaN;
  return Math.abs(value) <= most ? value : NaN;
}

export const sentHand = (sent: Source): HandBoxes =>
  Object.fromEntries(HAND_BOXES.map((box) => [box, String(sent.get(box) ?? '').slice(0, 400)])) as HandBoxes;

/** Reads a correction of how an outline lies; each box that cannot be read says what to type. */
export function readHand(boxes: HandBoxes): {
  readonly trial: HandTrial;
  readonly errors: Readonly<Record<string, string>>;
} {
  const dx = typed(boxes.dx, MOST_MM);
  const dy = typed(boxes.dy, MOST_MM);
  const degrees = typed(boxes.angle, MOST_DEGREES);
  const errors = {
    ...(Number.isNaN(dx) ? { dx: `Enter mm, such as 0.5 or -1.2, at most ${MOST_MM}.` } : {}),
    ...(Number.isNaN(dy) ? { dy: `Enter mm, such as 0.5 or -1.2, at most ${MOST_MM}.` } : {}),
    ...(Number.isNaN(degrees)
      ? { angle: `Enter degrees, such as 1.5 or -0.5, at most ${MOST_DEGREES}.` }
      : {}),
  };
  const number = (value: number): number => (Number.isNaN(value) ? 0 : value);
  return {
    trial: {
      dxMm: number(dx),
      dyMm: number(dy),
      angleRad: toCanonical(number(degrees), '°', 'angle'),
      mirrored: boxes.mirror !== '',
    },
    errors,
  };
}

const short = (value: number): string => String(Number(value.toFixed(3)) + 0);

/** The boxes for an outline that is kept. */
export const handOf = ({ hand, mirrored }: Trace): HandBoxes => ({
  dx: hand ? short(hand.dxMm) : '',
  dy: hand ? short(hand.dyMm) : '',
  angle: hand ? short(fromCanonical(hand.angleRad, '°', 'angle')) : '',
  mirror: mirrored ? 'on' : '',
  reason: hand?.reason ?? '',
});
