// The desk of the pages over the stand-in for the door.
import { tick } from 'svelte';
import { desk } from '../src/app/asking/desk.svelte.ts';
import { tables } from '../src/app/asking/tables.svelte.ts';
import type { BoundCard, RecordCard, SystemCard } from '../src/door/wire.ts';
import { door } from './door.ts';

/** Lets everything run that waits for nothing but its turn. */
export async function settled() {
  for (let turn = 0; turn < 8; turn += 1) await tick();
}

/** Opens the desk, with these ranges. */
export async function openDesk(bounds: BoundCard[] = []) {
  await desk.open();
  const loading = tables.load();
  await settled();
  door.asks.at(-1)?.answer({ bounds, records, systems });
  await loading;
  door.forget();
}

export const bound = (field: string, min: number, max: number): BoundCard => ({ field, label: field, min, max }) as BoundCard;

/** Two systems: one with everything, one without a battery. */
const systems: SystemCard[] = [
  { system: 'regulatedBattery', battery: true, lightingCoil: false, lacks: [] },
  { system: 'lightingCoil', battery: false, lightingCoil: true, lacks: ['chargingVolts', 'batteryAh', 'ratedHours', 'peukert'] },
];

/** Two records with a few of their fields. */
const records: RecordCard[] = [
  { recordKind: 'drive', words: 'Drive', fields: [{ field: 'frontTeeth', words: 'Gearbox sprocket' }] },
  {
    recordKind: 'job',
    words: 'Job',
    fields: [
      { field: 'wait.name', words: 'Wait' },
      { field: 'wait.odd', words: 'Odd' },
    ],
  },
];
