import { type Source } from '../../findings/finding';
import { railSection } from '../../rail/sections';
import { inchesMm } from '../inches';
import { railPieces, type RailDesign } from '../rail-pieces';
import { type ReferenceShape } from '../shape';

type Stated = {
  readonly sectionId: string;
  readonly source: Source;
  readonly notes: readonly string[];
};

/** A shape on the overall sizes of its section; throws when the section is not in the table (a bug). */
function railShape({ sectionId, source, notes }: Stated, design: RailDesign): ReferenceShape {
  const section = railSection(sectionId);
  if (section === null) throw new Error(`${sectionId} is not among the rail sections.`);
  return {
    id: sectionId.toLowerCase(),
    name: `${sectionId} rail`,
    shape: 'rail',
    sectionId,
    pieces: railPieces(section, design),
    source,
    notes,
  };
}

/** What a North American section's file says of it; inches. */
export type NorthAmericanRail = {
  readonly sectionId: string;
  readonly crownIn: number;
  readonly cornerIn: number;
  /** Half-width of the crown, chosen so that the area of the head is the published one; where that is not known, so that the corner ends by the gauge point. */
  readonly crownHalfWidthIn: number;
  readonly headDepthIn: number;
  readonly baseDepthIn: number;
  /** Hollow of the web, chosen so that the area of the web, or of the whole, is the published one. */
  readonly webIn: number;
  readonly notes: readonly string[];
};

export const northAmericanRail = (rail: NorthAmericanRail): ReferenceShape =>
  railShape(
    {
      sectionId: rail.sectionId,
      source: {
        text: 'AREMA Manual for Railway Engineering, ch. 4 part 1: overall sizes, depth of head and base, areas as reprinted in rail makers’ catalogues; radii',
        status: 'from memory',
      },
      notes: [
        'Height, base, head width, web, depth of head and base and the areas are published; crown, shoulder and corner radii, the side slope 1:40 and the fillets are from memory.',
        ...rail.notes,
      ],
    },
    {
      crownRadiusMm: inchesMm(rail.crownIn),
      shoulderRadiusMm: inchesMm(1.25),
      cornerRadiusMm: inchesMm(rail.cornerIn),
      crownHalfWidthMm: inchesMm(rail.crownHalfWidthIn),
      sideSlope: 1 / 40,
      widthAtMm: inchesMm(5 / 8),
      headDepthMm: inchesMm(rail.headDepthIn),
      baseDepthMm: inchesMm(rail.baseDepthIn),
      fishingSlope: 1 / 4,
      lowerCornerRadiusMm: inchesMm(1 / 16),
      webRadiusMm: inchesMm(rail.webIn),
      upperFilletRadiusMm: inchesMm(3 / 4),
      lowerFilletRadiusMm: inchesMm(3 / 4),
      toeMm: inchesMm(7 / 16),
      toeSlope: 1 / 4,
      toeRadiusMm: inchesMm(1 / 16),
    },
  );

/** What a European section's file says of it; mm. */
export type EuropeanRail = {
  readonly sectionId: string;
  readonly crownHalfWidthMm: number;
  readonly widthAtMm: number;
  readonly headDepthMm: number;
  readonly baseDepthMm: number;
  readonly toeMm: number;
  readonly filletMm: number;
  readonly source: Source;
  readonly notes: readonly string[];
};

export const europeanRail = (rail: EuropeanRail): ReferenceShape =>
  railShape(
    {
      sectionId: rail.sectionId,
      source: rail.source,
      notes: [
        ...rail.notes,
        'Below the head the fishing surfaces are 1:2.75 and 1:14; the fillets at the web are single arcs chosen so that the area is the published one, from memory.',
      ],
    },
    {
      crownRadiusMm: 300,
      shoulderRadiusMm: 80,
      cornerRadiusMm: 13,
      crownHalfWidthMm: rail.crownHalfWidthMm,
      sideSlope: 1 / 20,
      widthAtMm: rail.widthAtMm,
      headDepthMm: rail.headDepthMm,
      baseDepthMm: rail.baseDepthMm,
      fishingSlope: 1 / 2.75,
      lowerCornerRadiusMm: 3,
      webRadiusMm: 500,
      upperFilletRadiusMm: rail.filletMm,
      lowerFilletRadiusMm: rail.filletMm,
      toeMm: rail.toeMm,
      toeSlope: 1 / 14,
      toeRadiusMm: 3,
    },
  );
