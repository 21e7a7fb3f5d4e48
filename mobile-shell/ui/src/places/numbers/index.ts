// The pages of this place, loaded together.
export { default as Numbers } from './Numbers.svelte';
export { default as Gearing } from './Gearing.svelte';
export { default as Load } from './Load.svelte';
export { default as Cure } from './Cure.svelte';
export { default as CureClock } from './CureClock.svelte';
