// Every page in the pseudo-language: all that it says comes from the catalogue, in whole messages, and has room to be longer.
import { cut } from './lib/cut.ts';
import { Allowance, answered, beside, joined, keepAnswers, outside, saidOn, textsIn } from './lib/fragments.ts';
import { PAGES, show } from './lib/pages.mjs';
import { readInPseudo, speakPseudo } from './lib/pseudo.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

/** Far more than it takes, even on a busy machine: as long as there are pages to look at. */
const AT_MOST = PAGES.length * 10_000;

// What a service worker fetches, no route of a test sees.
test.use({ serviceWorkers: 'block' });

test('a text beside the catalogue and a joined one are found, what was entered is let pass', () => {
  expect(outside('⟦á ⟦ƀ⟧ ç ~~⟧ and ⟦ð⟧')).toEqual({ rest: ' and ', messages: 2 });
  const allowance = new Allowance(['Tank, inside', 'DOT 4']);
  const texts = ['Tank, inside: ⟦Ĥéļļó ~~⟧', '12.5 mm', 'DOT 4', 'A word', 'x', '⟦á⟧ · ⟦ƀ⟧'].map((text) => ({ at: 'p', text }));
  expect(beside(texts, allowance)).toEqual(['p: A word']);
  expect(joined(texts)).toEqual(['p: ⟦á⟧ · ⟦ƀ⟧']);
  const message = { messageId: 'a', arguments: [{ name: 'b', value: { kind: 'text', text: 'Tern' } }] };
  expect(textsIn({ name: 'Pike', said: message, count: 3 })).toEqual(['Pike', 'Tern']);
});

test('every page speaks the language that was chosen, in whole sentences, and cuts none of them', async ({ page, context }) => {
  test.setTimeout(AT_MOST);
  await speakPseudo(context);
  await keepAnswers(page);
  const reader = readInPseudo(page);
  await openDemo(reader);
  await expect(page.locator('html')).toHaveAttribute('lang', 'en-XA');
  const entered = new Set<string>();
  for (const entry of PAGES) {
    await test.step(entry[0], async () => {
      await show(reader, entry);
      for (const text of await answered(page)) entered.add(text);
      const said = await saidOn(page);
      expect.soft(beside(said, new Allowance([...entered])), `${entry[0]}: beside the catalogue`).toEqual([]);
      expect.soft(joined(said), `${entry[0]}: joined from pieces`).toEqual([]);
      expect.soft(await cut(page), `${entry[0]}: cut off`).toEqual([]);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect.soft(over, `${entry[0]} is wider than the screen`).toBeLessThanOrEqual(0);
    });
  }
});
