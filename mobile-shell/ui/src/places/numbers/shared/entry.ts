// A number that a page asks for.
import type { Unit } from '../../../door/wire.ts';

export interface Entry {
  /** Name at the door, and in the address. */
  field: string;
  label: string;
  unit: Unit;
  decimals?: number;
  note?: string;
  /** It may be left out. */
  optional?: boolean;
  /** Where two questions share the name of the field, or the range has another name. */
  bound?: [field: string, label?: string];
}
