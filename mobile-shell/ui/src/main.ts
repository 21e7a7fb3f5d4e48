// The first script, kept small: it opens the data, then loads the pages.
import './base.css';
import { opening } from './app/asking/early.ts';

void opening.then(() => import('./pages.ts'));
