// Every word that the pages show, from one catalogue: a translation is the folder `words`. What the core says (reasons,
// findings, items) comes from the core in its own sentences.
import { bike } from './words/bike.ts';
import { brakes } from './words/brakes.ts';
import { coats } from './words/coats.ts';
import { drive } from './words/drive.ts';
import { electrical } from './words/electrical.ts';
import { faults } from './words/faults.ts';
import { fluids } from './words/fluids.ts';
import { inspect } from './words/inspect.ts';
import * as labels from './words/labels.ts';
import { numbers } from './words/numbers.ts';
import { plan } from './words/plan.ts';
import { shell } from './words/shell.ts';
import { start } from './words/start.ts';
import { sure } from './words/sure.ts';
import { threads } from './words/threads.ts';
import { today } from './words/today.ts';
import { tyres } from './words/tyres.ts';

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
