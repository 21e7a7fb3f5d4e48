// A refusal as something that can be thrown. What it says has no words yet: the desk puts it into words.
import type { DoorRefusal } from './backend.ts';

export class Refused extends Error {
  readonly refusal: DoorRefusal;

  constructor(refusal: DoorRefusal) {
    super(refusal.code);
    this.name = 'Refused';
    this.refusal = refusal;
  }
}
