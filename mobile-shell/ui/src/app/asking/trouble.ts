// What went wrong in the door itself, in words.
import type { Trouble } from '../../door/index.ts';
import { t } from '../../words/index.ts';

export function inWords(trouble: Trouble): string {
  if (trouble.kind === 'noFiles') return t('door-no-files');
  if (trouble.kind === 'interrupted') return t('door-interrupted');
  if (trouble.kind === 'notLoaded') return t('door-not-loaded', { why: trouble.why || null });
  return t('door-stopped', { place: trouble.place });
}
