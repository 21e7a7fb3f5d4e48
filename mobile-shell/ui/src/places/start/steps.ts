// Where each step of starting a bike goes on to.
import { desk } from '../../app/asking/desk.svelte.ts';
import { route } from '../../app/route.svelte.ts';
import { STEPS, type Step } from '../../app/starting.ts';
import { t } from '../../words/index.ts';

/** Goes on to the next step; after the last one, and after a step that was entered by itself, to Today. */
export function goOn(step: Step) {
  const next = STEPS[STEPS.indexOf(step) + 1];
  if (route.query.has('alone')) return route.up('#/today');
  if (next) route.replace(`#/start/own?step=${next}`);
  else route.go('#/today');
  if (!next) desk.say(t('start-all-said'));
  scrollTo(0, 0);
}
