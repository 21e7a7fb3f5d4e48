// The pages of this place, loaded together.
export { default as Plan } from './Plan.svelte';
export { default as ReadyMade } from './ReadyMade.svelte';
