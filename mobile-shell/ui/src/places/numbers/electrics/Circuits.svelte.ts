// What the circuit page tries: which circuit, how its switches stand, which fault.
import { amount } from '../../../show/number.ts';
import { route } from '../../../app/route.svelte.ts';
import { textIn } from '../shared/address.svelte.ts';
import type { Element, HarnessAsk, HarnessAnswer, SwitchPosition } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import { t } from '../../../words/index.ts';

/** The switches from the address: `dip:high,brake:on`. */
export function positions(): SwitchPosition[] {
  const text = route.query.get('set') ?? '';
  return text.split(',').flatMap((pair) => {
    const at = pair.indexOf(':');
    return at > 0 ? [{ switch: pair.slice(0, at), position: pair.slice(at + 1) }] : [];
  });
}

export function setting(change: SwitchPosition): string {
  return [...positions().filter((each) => each.switch !== change.switch), change].map((each) => `${each.switch}:${each.position}`).join(',');
}

export function tried(sheet: HarnessAnswer | undefined): HarnessAsk {
  const circuit = textIn('circuit');
  const fault = sheet && sheet.circuit === (circuit ?? sheet.circuit) ? sheet.places[Number(textIn('fault') ?? NaN)]?.fault : undefined;
  return { circuit, setting: { positions: positions() }, fault: fault ?? null };
}

/** The position in which a switch stands: as asked, else as the core set it. */
export const stands = (sheet: HarnessAnswer, id: string): string | null =>
  sheet.setting.positions.find((each) => each.switch === id)?.position ?? sheet.harness.switches.find((each) => each.id === id)?.positions[0] ?? null;

/** Volts and amperes of an element. */
export function flowRows(sheet: HarnessAnswer, element: Element): Row[] {
  const flow = sheet.point?.flows.find((each) => each.element === element.id);
  const over = sheet.point?.overloads.find((each) => each.element === element.id);
  const rows: Row[] = [];
  if (flow) {
    rows.push({ label: t('circuits-across', { alternating: sheet.alternating }), value: amount(flow.volts, 'volt', 2) });
    rows.push({
      label: t('circuits-through', { alternating: sheet.alternating }),
      value: amount(flow.amperes, 'ampere', 2),
      below: over ? t('circuits-overloaded', { amperes: amount(over.amperes, 'ampere', 1), may: amount(over.mayCarryAmperes, 'ampere', 1) }) : undefined,
      mark: over !== undefined,
    });
  }
  return rows;
}

export const lampRows = (sheet: HarnessAnswer): Row[] =>
  (sheet.point?.lamps ?? []).map((lamp) => ({ label: lamp.label, value: t(`lamp-look-${lamp.look}`), after: amount(lamp.share * 100, 'percent', 0) }));

export const dropRows = (sheet: HarnessAnswer): Row[] =>
  sheet.drops.map((drop) => ({
    label: drop.label,
    value: t('circuits-drop-row', { feed: amount(drop.feedVolts, 'volt', 2), earth: amount(drop.earthVolts, 'volt', 2) }),
    mark: !drop.accepted,
  }));

/** The short value of an element in the list. */
export function inShort(sheet: HarnessAnswer, element: Element): string {
  if (sheet.point?.blown.includes(element.id)) return `▲ ${t('circuits-blown')}`;
  const flow = sheet.point?.flows.find((each) => each.element === element.id);
  return flow ? amount(flow.amperes, 'ampere', 2) : '';
}
