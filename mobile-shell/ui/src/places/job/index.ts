// The pages of this place, loaded together.
export { default as JobPage } from './JobPage.svelte';
export { default as JobForm } from './JobForm.svelte';
export { default as AtBench } from './AtBench.svelte';
