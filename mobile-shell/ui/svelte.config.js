// Svelte 5 reads TypeScript in its own components; nothing has to be preprocessed.
export default { compilerOptions: { runes: true } };
