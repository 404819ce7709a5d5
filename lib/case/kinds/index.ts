import type { Kind } from '../kind';
import type { EntityKind } from '../record';
import { markKind, railKind, stationKind, turnoutKind } from './ground';
import { lineStretchKind } from './line-stretch';
import { instrumentKind, personKind, statementKind } from './people';
import { truckKind, wheelDefectKind, wheelsetKind } from './running-gear';
import { vehicleKind } from './vehicle';

export { caseKind } from './case';

/** Every kind of record of a case; adding one is a file, this line, and a table in db/schema. */
export const KINDS: Readonly<Record<EntityKind, Kind>> = {
  person: personKind,
  instrument: instrumentKind,
  vehicle: vehicleKind,
  lineStretch: lineStretchKind,
  mark: markKind,
  station: stationKind,
  wheelset: wheelsetKind,
  wheelDefect: wheelDefectKind,
  truck: truckKind,
  rail: railKind,
  turnout: turnoutKind,
  statement: statementKind,
};
