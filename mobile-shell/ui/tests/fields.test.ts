// Forms ask only what a part has.
import { expect, test } from 'vitest';
import { openDesk } from './desk.ts';
import { fieldsOf, SECTIONS } from '../src/places/bike/shared/fields.ts';

const brake = SECTIONS.find((section) => section.id === 'front-brake');
const asked = (values: Record<string, unknown>) => (brake ? fieldsOf(brake, values).map((field) => field.key) : []);

test('a drum has no master cylinder and a disc no cam lever', () => {
  expect(asked({ brake: 'drum' })).toEqual(['brake', 'rotorMm', 'camArmMm', 'camDegrees', 'twinLeading', 'padFriction']);
  expect(asked({ brake: 'disc' })).toContain('masterMm');
  expect(asked({ brake: 'disc' })).not.toContain('camArmMm');
});

test('a brake of unknown kind is asked for its kind, and the drum has the range of drums', () => {
  expect(asked({})).toEqual(['brake', 'padFriction']);
  const drum = brake && fieldsOf(brake, { brake: 'drum' }).find((field) => field.key === 'rotorMm');
  expect(drum?.entry).toMatchObject({ bound: 'drum' });
});

test('what was entered before stays in sight, once', () => {
  expect(asked({ brake: 'drum', masterMm: 14, rotorMm: 130 }).filter((key) => key === 'masterMm' || key === 'rotorMm')).toEqual(['rotorMm', 'masterMm']);
  expect(asked({ rotorMm: 130 })).toEqual(['brake', 'padFriction', 'rotorMm']);
});

test('a bike is not asked for what the core says that its electrical system lacks, unless it was entered before', async () => {
  await openDesk();
  const supply = SECTIONS.find((section) => section.id === 'supply');
  const of = (values: Record<string, unknown>) => (supply ? fieldsOf(supply, values).map((field) => field.key) : []);
  expect(of({})).toEqual(['system', 'systemVolts', 'chargingVolts', 'batteryAh', 'ratedHours', 'peukert', 'ignition', 'idleRpm', 'output']);
  expect(of({ system: 'regulatedBattery' })).toEqual(of({}));
  expect(of({ system: 'lightingCoil' })).toEqual(['system', 'systemVolts', 'ignition', 'idleRpm', 'output']);
  expect(of({ system: 'lightingCoil', batteryAh: 4 })).toContain('batteryAh');
});
