// What the cure page tries: a product, or one's own can, at a temperature.
import { Drafted } from '../../../../app/forms/drafted.svelte.ts';
import { moment } from '../../../../show/date.ts';
import { passing } from '../../../../show/number.ts';
import type { CureAnswer, Product } from '../../../../door/wire.ts';
import type { Row } from '../../../../parts/answers/row.ts';
import { t } from '../../../../words/index.ts';

export class CureTry {
  /** Kept on the device: nobody types what is on a can twice. */
  readonly #draft = new Drafted<{ chosen: string | null; own: Product | null }>();
  celsius = $state<number | null>(null);
  humidity = $state<number | null>(null);
  surfaceCelsius = $state<number | null>(null);

  constructor() {
    this.#draft.fill('cure', { chosen: null, own: null });
  }

  get chosen(): string | null {
    return this.#draft.value?.chosen ?? null;
  }
  /** The data of one's own can, once something was changed. */
  get own(): Product | null {
    return this.#draft.value?.own ?? null;
  }

  choose(name: string | null) {
    this.put({ chosen: name, own: null });
  }
  put(change: { chosen?: string | null; own?: Product | null }) {
    if (this.#draft.value) Object.assign(this.#draft.value, change);
  }
}

/** When each state begins, or began. */
export function milestones(sheet: CureAnswer): Row[] {
  return sheet.milestones
    .filter((milestone) => milestone.state !== 'wet')
    .map((milestone) => ({
      label: t(`cure-state-${milestone.state}`),
      value: milestone.dueMs ? moment(milestone.dueMs) : t('cure-not-reached'),
      below: milestone.reached ? t('cure-reached') : t('cure-hours-on-can', { hours: passing(milestone.hours) }),
    }));
}
