// Sees to the language before the pages are loaded: the one that was chosen, or that of the device.
import { languages } from 'virtual:languages';
import { bestMatch, ENGLISH, fetchLanguage, speak, spokenTag } from '../words/spoken.ts';
import { AS_DEVICE, loadKept } from './kept.ts';

export { languages };

/** What is to be spoken, by the setting and by what the device asks for. */
export function wantedTag(setting: unknown, device: readonly string[]): string {
  const chosen = typeof setting === 'string' && setting !== AS_DEVICE ? setting : null;
  return (
    chosen ??
    bestMatch(
      device,
      languages.map(({ tag }) => tag),
    )
  );
}

/** What is to be spoken from this start on. */
export const tagAtStart = () => wantedTag(loadKept().language, navigator.languages);

/** Fetches the language that is wanted, unless that is English. One that is not there any more gives way to English. */
export async function takeLanguage() {
  const tag = tagAtStart();
  if (tag === ENGLISH) return;
  speak(await fetchLanguage(tag));
  document.documentElement.lang = spokenTag();
}
