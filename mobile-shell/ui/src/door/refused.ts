// A refusal as something that can be thrown.
import type { Code, Refusal } from '../../../../bindings/generated/typescript/door.ts';

export class Refused extends Error implements Refusal {
  readonly code: Code;
  readonly field: string | null;

  constructor(refusal: Refusal) {
    super(refusal.message);
    this.name = 'Refused';
    this.code = refusal.code;
    this.field = refusal.field ?? null;
  }
}
