// A number that a page asks for.
import type { BoundId, Unit } from '../../../door/wire.ts';

export interface Entry {
  /** Name at the door, and in the address. */
  field: string;
  label: string;
  unit: Unit;
  decimals?: number;
  note?: string;
  /** It may be left out. */
  optional?: boolean;
  /** The accepted range. */
  bound: BoundId;
}
