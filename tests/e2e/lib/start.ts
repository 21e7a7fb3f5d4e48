// A bike of one's own, started as its owner does.
import type { Page } from '@playwright/test';
import { press } from './steps.mjs';

/** Starts a bike of a kind; the steps behind it are left for later. */
export async function barnFind(page: Page, kind: string) {
  await page.goto('./');
  await press(page, 'Start my bike');
  await page.getByLabel('Name of the bike').fill('Barn find');
  await press(page, 'Next');
  await page.getByRole('radio', { name: kind }).click();
  await press(page, 'Next');
  await page.getByRole('heading', { level: 1, name: 'What is to be done?' }).waitFor();
}
