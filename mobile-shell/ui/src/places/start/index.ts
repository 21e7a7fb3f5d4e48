// The pages of this place, loaded together.
export { default as Start } from './Start.svelte';
export { default as StartForm } from './StartForm.svelte';
