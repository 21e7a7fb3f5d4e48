// Records with nothing known yet.
import type { Brake, Consumer, Drive, Fluid, Job, Part, Supply, Wheel } from '../../door/wire.ts';

export const blankDrive = (): Drive => ({ gearRatios: [], powerCurve: [] });
export const blankWheel = (): Wheel => ({ tubeSizes: [] });
export const blankSupply = (): Supply => ({ output: [] });
export const blankBrake = (): Brake => ({});
export const blankFluid = (): Fluid => ({ name: '' });
export const blankConsumer = (): Consumer => ({ name: '', watts: 0, count: 1 });
export const blankPart = (): Part => ({ title: '', state: 'wanted', reasons: [] });

export const blankJob = (rank: number): Job => ({
  title: '',
  stage: 'repair',
  steps: [],
  handsOnMinutes: 60,
  state: 'open',
  stepsDone: 0,
  after: [],
  parts: [],
  rank,
  reasons: [],
});
