import type { LoadedCase } from '~/app/case.server';
import { instrumentChoice, type InstrumentChoice } from '~/app/readings/instruments-for.server';
import { readingsChoices } from '~/app/readings/view.server';
import type { Actor } from '~/db/actor';
import { STATION_GROUPS } from './columns';

/** What the open sheet needs besides its rows. */
export type SheetEntryView = {
  readonly asOf: number;
  readonly person: string;
  readonly people: readonly { readonly id: string; readonly label: string }[];
  readonly instruments: readonly InstrumentChoice[];
};

export function sheetEntryView(loaded: LoadedCase, actor: Actor, open: boolean): SheetEntryView {
  const { record } = loaded;
  return {
    asOf: record.readings.length,
    person: actor.personId ?? '',
    people: readingsChoices(loaded).people,
    instruments: (open ? STATION_GROUPS : [])
      .flatMap(({ quantities }) => quantities)
      .flatMap((quantity) => instrumentChoice(record, quantity) ?? []),
  };
}
