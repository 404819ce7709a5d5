import type { Disturbance, SubjectRef } from './record';

/** Shapes that a standard draws new, so that traces can be laid over them. */
export const STANDARD_SHAPES = ['wheel', 'rail'] as const;
export type StandardShape = (typeof STANDARD_SHAPES)[number];

/** What an outline can be of. A switch point is planed to its stock rail and has no standard shape. */
export const TRACED_SHAPES = [...STANDARD_SHAPES, 'point'] as const;
export type TracedShape = (typeof TRACED_SHAPES)[number];

/** Two points of the picture, in pixels, whose true distance apart is known. */
export type ScalePair = {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly apartMm: number;
};

/** How the outline came into the case; everything needed to make it again from the file that was kept. */
export type TraceMaking = {
  /** Of a rail: the upright of the drawing is square to the plane of the track, so that it carries the cant. */
  readonly plumb?: true;
  /** Of a point: its distance behind the tip as it was typed. */
  readonly behindEntered?: string;
} & (
  | {
      readonly by: 'file';
      readonly unit: 'mm' | 'in';
      /** Columns of x and y, counted from 0. */
      readonly columns: readonly [number, number];
      readonly flipped: { readonly x: boolean; readonly y: boolean };
    }
  | {
      readonly by: 'photo';
      /** Width and height of the picture the pixels are counted in: the photo upright, made smaller. */
      readonly size: readonly [number, number];
      /** Focal length as of 35-mm film that the photo's file names; null when it names none. */
      readonly focal35Mm: number | null;
      /**
       * One pair sets the scale; two across each other, or the four sides of a rectangle in order,
       * take out the tilt of the camera too.
       */
      readonly scale: readonly ScalePair[];
      /** Points the user set, in pixels; between them the line was followed. */
      readonly clicks: readonly (readonly [number, number])[];
      /** Which stretches between clicks were drawn straight, because the line could not be followed. */
      readonly straight: readonly number[];
    }
  | {
      readonly by: 'pins';
      /** Offsets as typed, one per pin. */
      readonly entered: string;
      readonly unit: 'mm' | 'in';
      readonly pitchMm: number;
    }
);

/**
 * What is known about how well the line stands for the shape, all standard uncertainties (k = 1):
 * across the line (pencil, pin end, pixel), and of the scale as a share of length.
 */
export type TraceUncertainty = {
  readonly acrossMm: number;
  readonly scale: number;
  /** Where the two come from, a sentence each. */
  readonly because: readonly string[];
};

/** A correction by hand on top of the placing that registration finds, and why. */
export type HandPlacing = {
  readonly dxMm: number;
  readonly dyMm: number;
  readonly angleRad: number;
  readonly reason: string;
};

/** An outline of one wheel, of one rail or of a switch point, as it was traced. Points are never changed once kept. */
export type Trace = {
  readonly id: string;
  readonly order: number;
  readonly shape: TracedShape;
  /** A wheelset, a rail or a turnout. */
  readonly subject: SubjectRef & { readonly kind: 'wheelset' | 'rail' | 'turnout' };
  /** Which wheel of the wheelset, which point of the turnout; of a rail the side that the rail itself has. */
  readonly side: 'left' | 'right';
  /** Of a point: how far behind its tip the cross-section lies, mm from 0 at the tip; null of anything else. */
  readonly behindMm: number | null;
  /** The file it came from, kept under its SHA-256; for typed pins the typed text. */
  readonly sha256: string;
  readonly fileName: string;
  readonly making: TraceMaking;
  /** Line in the drawing's own frame: x right, y up, mm after scale. x0, y0, x1, y1, … */
  readonly pointsMm: Float64Array;
  readonly uncertainty: TraceUncertainty;
  /** The drawing shows the shape the other way round, as a mirror would. */
  readonly mirrored: boolean;
  readonly hand: HandPlacing | null;
  /** Distance the wheel had run when it was traced, km since new or since turned; null when not known. */
  readonly distanceRunKm: number | null;
  readonly instrumentId: string | null;
  readonly personId: string | null;
  /** Local date and time at the site, ISO 8601 without zone. */
  readonly takenAt: string | null;
  readonly disturbance: Disturbance;
  readonly note: string;
  readonly removed: { readonly at: string; readonly reason: string } | null;
  readonly createdAt: string;
};

/** A trace of something that a standard draws new. */
export type ShapedTrace = Trace & { readonly shape: StandardShape };

export const isShaped = (trace: Trace): trace is ShapedTrace => trace.shape !== 'point';

/** A shape of the user's own, from a file, to lay traces over. In the frame of `../outline/outline`. */
export type OwnShape = {
  readonly id: string;
  readonly order: number;
  readonly shape: StandardShape;
  readonly name: string;
  /** Where the shape comes from, in the user's words. */
  readonly source: string;
  readonly sha256: string;
  readonly fileName: string;
  readonly pointsMm: Float64Array;
  readonly removed: { readonly at: string; readonly reason: string } | null;
  readonly createdAt: string;
};
