// What the filling page tries: a filling of the bike or a volume of one's own, and the cups at hand.
import { numberIn, textIn } from '../shared/address.svelte.ts';
import { asRefusal, desk } from '../../../app/asking/desk.svelte.ts';
import { settings } from '../../../app/settings.svelte.ts';
import { cupful, digits } from '../../../show/number.ts';
import type { FillAsk, FillChoice, FillAnswer, Pour } from '../../../door/wire.ts';
import { listed } from '../../../words/core.ts';
import { t } from '../../../words/index.ts';

/** Sizes that are usual, mL; any other can be added. */
const USUAL = [50, 100, 250, 500, 1000, 2000, 5000];

/** A cup of a size of its own joins those at hand once the core can pour with it. */
export class OddCup {
  typed = $state<number | null>(null);
  wrong = $state('');

  async add(millilitres: number | null) {
    this.typed = millilitres;
    this.wrong = '';
    if (millilitres === null) return;
    const cups = [...settings.cups.filter((cup) => cup !== millilitres), Math.round(millilitres)];
    try {
      await desk.ask<'filling'>({ kind: 'filling', litres: 1, cupsMl: cups });
    } catch (thrown) {
      this.wrong = asRefusal(thrown).message;
      return;
    }
    settings.setCups(cups);
    this.typed = null;
  }
}

/** The sizes to tick, smallest first. */
export function sizes() {
  return [...new Set([...USUAL, ...settings.cups])].sort((a, b) => a - b).map((size) => ({ value: String(size), word: cupful(size) }));
}

export function tried(): FillAsk {
  return { filling: numberIn('litres') === null ? textIn('filling') : null, litres: numberIn('litres'), cupsMl: settings.cups };
}

/** The pours in one short line: 1 L + 100 mL. */
export function inShort(sheet: FillAnswer): string {
  return listed(
    sheet.pours.map((pour) => (pour.times > 1 ? t('filling-times', { count: pour.times, part: part(pour) }) : part(pour))),
    'plus',
  );
}

/** Millilitres inside a cup stay millilitres: that is what its scale says. */
function part(pour: Pour): string {
  return pour.eachMl % 1000 === 0 ? cupful(pour.eachMl) : `${digits(pour.eachMl, 0)}\u00a0mL`;
}

export const describe = (choice: FillChoice): string => listed([choice.fill && t(`fill-kind-${choice.fill}`), choice.grade]);
