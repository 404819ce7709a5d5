import type { Context } from '../context';

/** On which rail line was taken: the outer one of a curve; on tangent the one the sheet says. */
export function lineRailRemark(context: Context): string {
  const said = context.read.state('case', context.record.id, 'lineRail')?.state;
  const { outer } = context.sides;
  if (outer !== null) return `Line taken on the outer rail of the curve, the ${outer} one.`;
  return said === 'left' || said === 'right'
    ? `Line taken on the outer rail of a curve, on the ${said} rail of tangent, as said for the sheet.`
    : 'Line taken on the outer rail of a curve, on the left rail of tangent.';
}
