// The types that cross the door, as they are generated from the core.
export type * from '../../../../bindings/generated/typescript/door.ts';
