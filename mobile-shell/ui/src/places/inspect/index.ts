// The pages of this place, loaded together.
export { default as Inspect } from './Inspect.svelte';
export { default as InspectItem } from './InspectItem.svelte';
export { default as Summary } from './Summary.svelte';
export { default as DaySheet } from './DaySheet.svelte';
