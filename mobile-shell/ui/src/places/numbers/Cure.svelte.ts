// What the cure page tries: a product, or one's own can, at a temperature.
import { moment } from '../../show/date.ts';
import { passing } from '../../show/number.ts';
import type { CureSheet, Product } from '../../app/wire.ts';
import type { Row } from '../../parts/Rows.svelte';
import { words } from '../../words.ts';

export class CureTry {
  chosen = $state<string | null>(null);
  /** The data of one's own can, once something was changed. */
  own = $state.raw<Product | null>(null);
  celsius = $state<number | null>(null);
  humidity = $state<number | null>(null);
  surfaceCelsius = $state<number | null>(null);

  choose(name: string | null) {
    this.chosen = name;
    this.own = null;
  }
}

/** When each state begins, or began. */
export function milestones(sheet: CureSheet): Row[] {
  return sheet.milestones
    .filter((milestone) => milestone.state !== 'wet')
    .map((milestone) => ({
      label: words.cureState[milestone.state],
      value: milestone.dueMs ? moment(milestone.dueMs) : words.cure.notReached,
      below: milestone.reached ? words.cure.reached : words.cure.hoursOnCan(passing(milestone.hours)),
    }));
}
