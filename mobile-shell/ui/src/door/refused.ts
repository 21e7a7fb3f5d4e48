// A refusal as something that can be thrown.
import type { Code } from '../../../../bindings/generated/typescript/door.ts';
import type { DoorRefusal, Trouble } from './backend.ts';

export class Refused extends Error implements DoorRefusal {
  readonly code: Code;
  readonly field: string | null;
  readonly trouble?: Trouble;

  constructor(refusal: DoorRefusal) {
    super(refusal.message);
    this.name = 'Refused';
    this.code = refusal.code;
    this.field = refusal.field ?? null;
    this.trouble = refusal.trouble;
  }
}
