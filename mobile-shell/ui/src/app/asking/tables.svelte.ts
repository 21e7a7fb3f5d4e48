// Units and accepted ranges, read once from the core: the UI has no table of its own.
import { desk } from './desk.svelte.ts';
import type { BoundCard, Unit, UnitCard } from '../../door/wire.ts';

class Tables {
  #units = $state.raw(new Map<Unit, UnitCard>());
  #bounds = $state.raw<BoundCard[]>([]);

  async load() {
    const tables = await desk.ask<'tables'>({ kind: 'tables' });
    this.#units = new Map(tables.units.map((card) => [card.unit, card]));
    this.#bounds = tables.bounds;
  }

  unit(unit: Unit): UnitCard {
    return this.#units.get(unit) ?? { unit, symbol: '', decimals: 2, other: null };
  }

  get units(): UnitCard[] {
    return [...this.#units.values()];
  }

  /** The accepted range of a field, by its name at the door; the label decides where two questions share a name. */
  bound(field: string, label?: string): BoundCard | undefined {
    return this.#bounds.find((card) => card.field === field && (label === undefined || card.label === label));
  }
}

export const tables = new Tables();
