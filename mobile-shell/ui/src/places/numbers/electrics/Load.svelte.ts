// What the load page tries: consumers in place of the fitted ones, or beside them.
import { tables } from '../../../app/asking/tables.svelte.ts';
import { amount, digits, figure } from '../../../show/number.ts';
import type { Balance, Consumer, ElectricalSystem, LoadAnswer, RidingState, Slot } from '../../../door/wire.ts';
import type { Try } from '../../../app/asking/together.svelte.ts';
import type { Row } from '../../../parts/answers/row.ts';
import { listed } from '../../../words/core.ts';
import { t } from '../../../words/index.ts';

export class LoadTry {
  riding = $state<RidingState>('busy');
  #tried = $state.raw<Slot[]>([]);

  get proposed(): Slot[] {
    return this.#tried;
  }

  of(id: string): Consumer | undefined {
    return this.#tried.find((slot) => slot.id === id)?.consumer;
  }

  put(id: string, consumer: Consumer) {
    this.#tried = [...this.#tried.filter((slot) => slot.id !== id), { id, consumer }];
  }

  clear() {
    this.#tried = [];
  }

  /** All of it as one try on the bike. */
  get own(): Try {
    return {
      key: 'load',
      name: listed(this.#tried.map(({ consumer }) => consumer.name)),
      proposals: this.#tried.map(({ id, consumer }) => ({ kind: 'consumer', id, consumer })),
      fit: this.#tried.map(({ id, consumer }) => ({ kind: 'fitConsumer', id, consumer })),
    };
  }
}

const hasNoBattery = (system: ElectricalSystem) => tables.system(system)?.battery === false;

/** What the lamps of a lighting coil get, at most. */
function coilRows(sheet: LoadAnswer, riding: RidingState): Row[] {
  const coil = sheet.coil.find((each) => each.state === riding);
  if (!coil) return [];
  const rpm = amount(sheet.engineRpm, 'rpm');
  const rows: [string, number | null | undefined][] = [
    [t('load-at-idle'), coil.atIdleVolts],
    [t('load-at-speed', { rpm }), coil.atSpeedVolts],
    [t('load-one-out', { rpm }), coil.oneOutVolts],
  ];
  return rows.flatMap(([label, volts]) =>
    volts === null || volts === undefined ? [] : [{ label, value: t('load-at-lamps', { volts: amount(volts, 'volt', 1) }) }],
  );
}

/** The large answer for a riding state. */
export function headline(sheet: LoadAnswer, riding: RidingState): { value: string; unit: string; meaning: string } {
  if (riding === 'standing') {
    const standing = sheet.stationary.find((each) => each.state === riding) ?? sheet.stationary[0];
    if (!standing && hasNoBattery(sheet.system)) return { value: '–', unit: '', meaning: t('load-standing-dark') };
    if (!standing) return { value: '–', unit: '', meaning: t('load-no-battery') };
    return { value: digits(standing.minutes, 0), unit: figure(1, 'minute').symbol, meaning: t('load-standing-more') };
  }
  const coil = sheet.coil.find((each) => each.state === riding);
  if (coil && sheet.output.length > 0) {
    const from = coil.fromRpm ?? null;
    if (from === null) return { value: t('load-never'), unit: '', meaning: t('load-coil-never-more') };
    return { value: digits(from, 0), unit: figure(1, 'rpm').symbol, meaning: t('load-coil-from') };
  }
  if (!coil && hasNoBattery(sheet.system)) return { value: '–', unit: '', meaning: t('load-coil-idle') };
  if (!coil && tables.system(sheet.system)?.lightingCoil) return { value: '–', unit: '', meaning: t('load-coil-beside') };
  const balance = sheet.balances.find((each) => each.state === riding);
  if (!balance) return { value: '–', unit: '', meaning: t('load-no-output') };
  if (balance.fromRpm === null || balance.fromRpm === undefined) return { value: t('load-never'), unit: '', meaning: t('load-never-more') };
  if ((balance.atIdleAmperes ?? -1) >= 0) return { value: amount(balance.fromRpm, 'rpm'), unit: '', meaning: t('load-holds-always') };
  return { value: digits(balance.fromRpm, 0), unit: figure(1, 'rpm').symbol, meaning: t('load-holds-from') };
}

function flow(amperes: number): string {
  const current = amount(Math.abs(amperes), 'ampere', 1);
  return amperes < 0 ? t('load-out-of', { current }) : t('load-into', { current });
}

export function lines(sheet: LoadAnswer, riding: RidingState): Row[] {
  const load = sheet.loads.find((each) => each.state === riding);
  const balance: Balance | undefined = sheet.balances.find((each) => each.state === riding);
  const rows: Row[] = [];
  if (load) {
    const tried = Math.abs(load.fittedWatts - load.watts) > 0.05;
    rows.push({
      label: t('load-load-row'),
      before: tried ? amount(load.fittedWatts, 'watt', 1) : undefined,
      value: amount(load.watts, 'watt', 1),
      after: amount(load.amperes, 'ampere', 1),
    });
  }
  if (balance && riding !== 'standing') {
    if (balance.atIdleAmperes !== null && balance.atIdleAmperes !== undefined) {
      rows.push({ label: t('load-at-idle'), value: flow(balance.atIdleAmperes), mark: balance.atIdleAmperes < 0 });
    }
    rows.push({ label: t('load-at-speed', { rpm: amount(sheet.engineRpm, 'rpm') }), value: flow(balance.atSpeedAmperes), mark: balance.atSpeedAmperes < 0 });
  }
  return [...rows, ...coilRows(sheet, riding)];
}
