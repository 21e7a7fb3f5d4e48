/// <reference types="vite/client" />
/// <reference types="svelte" />

/** Every language that ships, English first, by the name that it gives itself. */
declare module 'virtual:languages' {
  export const languages: { tag: string; name: string }[];
}
