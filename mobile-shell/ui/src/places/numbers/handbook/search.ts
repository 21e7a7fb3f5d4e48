// What is looked for in the handbook, and how ranges are written there.
import { digits } from '../../../show/number.ts';
import type { Area, FormulaCard, InputCard, Unit } from '../../../door/wire.ts';
import { inWords, listed } from '../../../words/core.ts';
import { t } from '../../../words/index.ts';

/** Letters without accents, in lower case: what is typed at the bench need not be exact. */
const plain = (text: string) => text.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '');

/** All that may be looked for in a formula. */
const everything = (formula: FormulaCard) =>
  plain(
    [
      formula.title,
      formula.equation,
      formula.range,
      formula.source.text,
      t(`handbook-areas-${formula.area}`),
      ...[...formula.inputs, ...formula.outputs].flatMap((each) => [each.label, each.symbol]),
    ].join(' '),
  );

/** The formulas that hold every word that is sought, area by area in the order of the handbook. */
export function byArea(formulas: FormulaCard[], sought: string): { area: Area; formulas: FormulaCard[] }[] {
  const wanted = plain(sought).split(/\s+/).filter(Boolean);
  const groups = new Map<Area, FormulaCard[]>();
  for (const formula of formulas) {
    const text = everything(formula);
    if (!wanted.every((word) => text.includes(word))) continue;
    groups.set(formula.area, [...(groups.get(formula.area) ?? []), formula]);
  }
  return [...groups].map(([area, inIt]) => ({ area, formulas: inIt }));
}

/** A number with the decimals that it has, and no more. */
const number = (value: number) => digits(value, String(value).split('.')[1]?.length ?? 0);

/**
 * An accepted range or the words to choose from; nothing for a text of its own form. It stands in the unit of the formula,
 * whatever this device shows elsewhere: the equation holds in that unit alone.
 */
export function rangeWords({ range, oneOf }: InputCard): string {
  if (!range) return listed(oneOf);
  const symbol = inWords(range.unit, range.max);
  return t('parts-between', { least: number(range.min), most: symbol ? `${number(range.max)}\u00a0${symbol}` : number(range.max) });
}

export const unitSymbol = (unit: Unit) => inWords(unit, 2) || t('handbook-plain-number');
