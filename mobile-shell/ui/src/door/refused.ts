// A refusal as something that can be thrown. What it says has no words yet: the desk puts it into words.
import type { DoorRefusal } from './backend.ts';

export class Refused extends Error {
  readonly refusal: DoorRefusal;
  readonly code: DoorRefusal['code'];
  readonly field: string | null;

  constructor(refusal: DoorRefusal) {
    super(refusal.code);
    this.name = 'Refused';
    this.refusal = refusal;
    this.code = refusal.code;
    this.field = refusal.field ?? null;
  }
}
