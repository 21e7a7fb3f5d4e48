// What is wrong with the air, in a few words.
import { keyOf, t } from '../../words/index.ts';

/** Nothing for what only a newer core speaks of. */
export function airHead(code: string): string | undefined {
  const known = keyOf('coats-air', code.replace('.', '-'));
  return known ? t(`coats-air-${known}`) : undefined;
}
