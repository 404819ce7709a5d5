import type { LoadedCase } from '~/app/case.server';
import { localTime } from '~/app/times';
import { STANDARD_SHAPES, type StandardShape } from '~/lib/case/trace';
import { referenceShapesOf } from '~/lib/shapes';

export type ShapeRow = {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  readonly status: string;
  readonly notes: readonly string[];
};

export type OwnShapeRow = ShapeRow & {
  readonly file: string;
  readonly sha256: string;
  readonly removed: string | null;
};

export type ShapesView = readonly {
  readonly shape: StandardShape;
  readonly built: readonly ShapeRow[];
  readonly own: readonly OwnShapeRow[];
}[];

/** Every reference shape a trace can be laid over, with where it comes from. */
export const shapesView = ({ record }: LoadedCase): ShapesView =>
  STANDARD_SHAPES.map((shape) => ({
    shape,
    built: referenceShapesOf(shape).map(({ id, name, source, notes }) => ({
      id,
      name,
      source: source.text,
      status: source.status,
      notes,
    })),
    own: record.ownShapes
      .filter((each) => each.shape === shape)
      .map(({ id, name, source, fileName, sha256, removed }) => ({
        id,
        name,
        source,
        status: 'your own',
        notes: [],
        file: fileName,
        sha256,
        removed: removed && `${localTime(removed.at)}: ${removed.reason}`,
      })),
  }));
