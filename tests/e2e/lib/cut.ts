// Finds text that its place cuts off.
import type { Page } from '@playwright/test';

/** Elements that hide what does not fit into them and hold text that does not, by their classes. What scrolls cuts nothing. */
export const cut = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const hides = (value: string) => value === 'hidden' || value === 'clip';
    const open = document.querySelector('dialog[open]');
    return [...(open ?? document.body).querySelectorAll<HTMLElement>('*')].flatMap((element) => {
      // For the ear alone, or a drawing.
      if (!element.textContent?.trim() || element.closest('.unseen, svg, script, style, noscript')) return [];
      const style = getComputedStyle(element);
      // A name on a drawing that ends in dots leads to where it stands in full, and is read out in full.
      if (style.textOverflow === 'ellipsis' && element.matches('a[href][aria-label]')) return [];
      const over = { x: element.scrollWidth - element.clientWidth, y: element.scrollHeight - element.clientHeight };
      const wide = (hides(style.overflowX) || style.textOverflow === 'ellipsis') && over.x > 1;
      const high = hides(style.overflowY) && over.y > 1;
      return wide || high ? [`${element.tagName.toLowerCase()}.${[...element.classList].join('.')} by ${over.x} x ${over.y}: ${element.textContent.trim().slice(0, 60)}`] : [];
    });
  });
