import { type StandardShape } from '../case/trace';
import { rail115RE } from './rails/115re';
import { rail119RE } from './rails/119re';
import { rail132RE } from './rails/132re';
import { rail133RE } from './rails/133re';
import { rail136RE } from './rails/136re';
import { rail141RE } from './rails/141re';
import { rail54E1 } from './rails/54e1';
import { rail60E1 } from './rails/60e1';
import { freightEarlier } from './wheels/freight-earlier';
import { freightNarrow } from './wheels/freight-narrow';
import { freightWide } from './wheels/freight-wide';
import { s1002 } from './wheels/s1002';
import { type ReferenceShape } from './shape';

/** Every reference shape the tool knows, wheels first. Adding one is one file and its line here. */
export const REFERENCE_SHAPES: readonly ReferenceShape[] = [
  freightNarrow,
  freightWide,
  freightEarlier,
  s1002,
  rail115RE,
  rail119RE,
  rail132RE,
  rail133RE,
  rail136RE,
  rail141RE,
  rail60E1,
  rail54E1,
];

/** The shape with this id; null when there is none. */
export const referenceShape = (id: string): ReferenceShape | null =>
  REFERENCE_SHAPES.find((shape) => shape.id === id) ?? null;

/** The shapes a trace of a wheel, or of a rail, can be laid over. */
export const referenceShapesOf = (traced: StandardShape): readonly ReferenceShape[] =>
  REFERENCE_SHAPES.filter(({ shape }) => shape === traced);

/** The shape of a rail section by the name it has in `../rail/sections`; null when there is none. */
export const shapeOfSection = (sectionId: string): ReferenceShape | null =>
  REFERENCE_SHAPES.find((shape) => shape.sectionId === sectionId) ?? null;
