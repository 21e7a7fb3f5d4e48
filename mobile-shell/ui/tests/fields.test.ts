// Forms ask only what a part has.
import { expect, test } from 'vitest';
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

test('a bike without a battery is not asked for one, and nothing unregulated for a regulator', () => {
  const supply = SECTIONS.find((section) => section.id === 'supply');
  const of = (system?: string) => (supply ? fieldsOf(supply, { system }).map((field) => field.key) : []);
  const battery = ['batteryAh', 'ratedHours', 'peukert'];
  expect(of()).toEqual(['system', 'systemVolts', 'chargingVolts', ...battery, 'ignition', 'idleRpm', 'output']);
  expect(of('regulatedBattery')).toEqual(of());
  expect(of('lightingCoil')).toEqual(['system', 'systemVolts', 'ignition', 'idleRpm', 'output']);
  expect(of('lightingCoilRegulated')).toEqual(['system', 'systemVolts', 'chargingVolts', 'ignition', 'idleRpm', 'output']);
  expect(of('halfWaveBattery')).toEqual(['system', 'systemVolts', ...battery, 'ignition', 'idleRpm', 'output']);
  expect(of('lightingCoilAndBattery')).toEqual(of('halfWaveBattery'));
});
