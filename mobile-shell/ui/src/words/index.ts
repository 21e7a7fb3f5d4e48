// Every word that the pages show, from one catalogue: a translation is the folder `words`. What the core says (reasons,
// findings, items) comes from the core in its own sentences.
import { bike } from './places/bike.ts';
import { brakes } from './trade/brakes.ts';
import { coats } from './trade/coats.ts';
import { drive } from './trade/drive.ts';
import { electrical } from './trade/electrical.ts';
import { faults } from './trade/faults.ts';
import { fluids } from './trade/fluids.ts';
import { inspect } from './places/inspect.ts';
import * as labels from './shared/labels.ts';
import { numbers } from './places/numbers.ts';
import { plan } from './places/plan.ts';
import { shell } from './places/shell.ts';
import { start } from './places/start.ts';
import { sure } from './places/sure.ts';
import { threads } from './trade/threads.ts';
import { today } from './places/today.ts';
import { tyres } from './trade/tyres.ts';

export const words = {
  ...labels,
  ...shell,
  ...start,
  ...today,
  ...plan,
  ...sure,
  ...numbers,
  ...brakes,
  ...drive,
  ...threads,
  ...fluids,
  ...coats,
  ...electrical,
  ...tyres,
  ...faults,
  ...inspect,
  ...bike,
};
