// Accepted ranges and the names of records and fields, read once from the core: the UI has no table of its own.
import { desk } from './desk.svelte.ts';
import type { BoundCard, BoundId, Delivery, ElectricalSystem, SystemCard } from '../../door/wire.ts';

class Tables {
  #bounds = $state.raw(new Map<BoundId, BoundCard>());
  #records = $state.raw(new Map<string, string>());
  #systems = $state.raw(new Map<string, SystemCard>());
  #usualDelivery = $state.raw<Delivery | undefined>();

  async load() {
    const tables = await desk.ask<'tables'>({ kind: 'tables' });
    this.#bounds = new Map(tables.bounds.map((card) => [card.id, card]));
    this.#systems = new Map(tables.systems.map((card) => [card.system, card]));
    this.#usualDelivery = tables.usualDelivery;
    this.#records = new Map(
      tables.records.flatMap((card) => [
        [card.recordKind, card.words] as const,
        ...card.fields.map((field) => [`${card.recordKind}.${field.field}`, field.words] as const),
      ]),
    );
  }

  /** What a kind of record is called. One that only a newer program knows keeps its own name. */
  record(kind: string): string {
    return this.#records.get(kind) ?? kind;
  }

  /** What a field of a record is called; `wait.hours` stands inside another. */
  field(kind: string, field: string): string {
    return this.#records.get(`${kind}.${field}`) ?? field;
  }

  /** What an electrical system has, and what its supply is not asked for. */
  system(system: ElectricalSystem): SystemCard | undefined {
    return this.#systems.get(system);
  }

  /** How long a part takes to come, where nobody knows better. */
  get usualDelivery(): Delivery | undefined {
    return this.#usualDelivery;
  }

  /** An accepted range. */
  bound(id: BoundId): BoundCard | undefined {
    return this.#bounds.get(id);
  }
}

export const tables = new Tables();
